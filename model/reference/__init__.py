"""Numbers of the trade, each with its source."""
