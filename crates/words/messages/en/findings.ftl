### Findings of a plan: `finding-<code>`, its remedy in `.remedy`; facts by name.
