"""Cutting plans: boards in stock lengths, thin panels in sheets, the proof that nothing is cheaper."""
