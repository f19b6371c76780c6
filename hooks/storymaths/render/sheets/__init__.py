"""Print sheets: what each shows, as plain data, and the templates that set it on A4 paper."""
