"""What is true: site and design, boards, checks and take-offs. No Qt, no disk, no clock."""
