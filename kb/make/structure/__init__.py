"""The rules that entries must keep together, one a file; table.py orders them."""
