"""Site and design become boards, one file for each thing a carpenter would name."""
