"""One subcommand of `drillpath` a file: options in, a question asked, the answer set."""
