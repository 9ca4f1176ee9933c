"""What is shipped: fonts, icons and demo jobs."""
