"""What each kind of page holds: one file a kind, each a record and the function that fills it from the stock."""
