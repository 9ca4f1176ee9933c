"""In what order a surround is put together and up, taken from which boards touch and what is driven where."""
