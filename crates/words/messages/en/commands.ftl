### What the command line says.
### Refusals: lower case, no full stop, the offending value in backticks, what to do in `.remedy`.

refused-file-missing = cannot find `{ $path }`
    .remedy = check the name and the folder, or run `octavo make --demo --out demo-out` to see a project that works
