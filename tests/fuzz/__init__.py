"""Readers fed with broken and malicious input: a value or a refusal comes of it, soon and in little memory.

``targets.py`` says what is read, ``json_mutator.py`` how JSON is spoilt, ``__main__.py`` is the command. The
folder ``corpus`` keeps, reader by reader, input that once broke something; tests read all of it again.
"""
