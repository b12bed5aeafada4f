//! One cutting question from a file, and its answer, in the layout of the cutting bench.
//!
//! `question` reads an instance, `answer` holds what is printed. The engines are asked in between; nothing
//! of an instance's name, source, bound or witness is looked at.

mod answer;
mod question;

use cutting::{Budget, fixed, flexible};

pub use answer::{AnswerJson, Grade, TreeJson};
pub use question::{Question, QuestionError, QuestionFile, read};

/// Ask the engine that fits the question.
///
/// # Shape
/// `seconds` is left at zero: whoever holds the clock fills it in.
///
/// # Errors
/// [`QuestionError::Refused`] where the engine cannot be asked this.
pub fn solve(question: &Question, budget: &mut Budget<'_>) -> Result<AnswerJson, QuestionError> {
    match question {
        Question::Flexible(asked) => {
            let answered =
                flexible::solve(&asked.instance, budget).map_err(|why| QuestionError::Refused(why.to_string()))?;
            Ok(answer::of_flexible(asked, &answered))
        }
        Question::Fixed(instance) => {
            let answered = fixed::solve(instance, budget).map_err(|why| QuestionError::Refused(why.to_string()))?;
            Ok(answer::of_fixed(instance, &answered))
        }
    }
}
