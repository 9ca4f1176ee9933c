"""Rules held against the boards; each result is a finding, never an exception."""
