"""What is touched: the window, the command line, disk and settings."""
