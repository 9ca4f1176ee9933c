"""The rows of the one table, by what they are about; model.parameters puts them together."""
