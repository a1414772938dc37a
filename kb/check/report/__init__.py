"""A library's quality page: what it covers, where it is thin, what each drill is good for, how hard it reads."""
