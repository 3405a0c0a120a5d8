"""Published values, each table with its source beside it."""
