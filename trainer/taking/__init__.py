"""Taking a sitting: from its file and the proctor's passphrase to what is handed in."""
