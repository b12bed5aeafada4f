### Mistakes in a project file: what was found, and in `.remedy` what would do.
