# noch nicht übersetzt
