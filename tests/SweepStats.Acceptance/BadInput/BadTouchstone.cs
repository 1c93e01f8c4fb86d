namespace SweepStats.Acceptance.BadInput;

/// <summary>Touchstone files that must be refused.</summary>
internal static class BadTouchstone
{
    public static IEnumerable<BadInput> All =>
    [
        BadInput.Floor("Touchstone without option line", "100 -1 0 -20 5 -3 0 -4 0\n", "f.s2p"),
        BadInput.Floor("Touchstone of impedances", "# MHz Z RI R 50\n1 1 0 1 0 1 0 1 0\n", "f.s2p"),
        BadInput.Floor("Touchstone with a strange option", "# furlong S DB R 50\n1 1 0 1 0 1 0 1 0\n", "f.s2p"),
        BadInput.Floor("Touchstone without rows", "# MHz S DB R 50\n", "f.s2p"),
        BadInput.Floor("Touchstone cut off", "# MHz S DB R 50\n1 1 0 1 0 1 0 1 0\n2 1 0 1 0\n", "f.s2p"),
        BadInput.Floor("Touchstone whose rows are too long", "# MHz S DB R 50\n1 1 0 1 0 1 0 1 0 9 9\n", "f.s2p"),
        BadInput.Floor("Touchstone with decimal commas", "# MHz S DB R 50\n1 1 0 1,5 0 1 0 1 0\n", "f.s2p"),
        BadInput.Floor("Touchstone whose S21 is zero", "# MHz S RI R 50\n1 1 0 0 0 1 0 1 0\n2 1 0 0 0 1 0 1 0\n", "f.s2p"),
        BadInput.Floor("a reflection", "# MHz S DB R 50\n1 -1 0\n2 -1 0\n", "f.s1p"),
        BadInput.Floor("Touchstone 2.0 without the order of its data",
            "[Version] 2.0\n# MHz S DB R 50\n[Number of Ports] 2\n[Number of Frequencies] 1\n[Network Data]\n1 1 0 1 0 1 0 1 "
                + "0\n[End]\n", "f.s2p"),
        BadInput.Floor("Touchstone 2.0 with fewer rows than it says",
            "[Version] 2.0\n# MHz S DB R 50\n[Number of Ports] 2\n[Two-Port Data Order] 21_12\n[Number of Frequencies] "
                + "2\n[Network Data]\n1 1 0 1 0 1 0 1 0\n[End]\n", "f.s2p"),
        BadInput.Floor("Touchstone 2.0 with an unknown keyword",
            "[Version] 2.0\n# MHz S DB R 50\n[Number of Prots] 2\n", "f.s2p"),
    ];
}
