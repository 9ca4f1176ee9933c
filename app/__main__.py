"""Lets ``python -m app`` start the program from a checkout."""

from app.main import main

raise SystemExit(main())
