using DetailGen.Drawing.Annotation;

namespace DetailGen.Drawing.Tests.Annotation;

/// <summary>Notes that are listed under their numbers.</summary>
public class KeyedNoteTests
{
    // Of P3, R1 and P10 the last stood behind all others of one figure.
    [Fact]
    public void Numbers_are_listed_by_letter_and_then_by_number()
    {
        string[] mixed = ["P10", "W2", "R1", "P3", "N12", "N2", "R11"];
        Assert.Equal(["N2", "N12", "P3", "P10", "R1", "R11", "W2"], KeyedNote.InOrder(mixed.Select(key => new KeyedNote("part", key, ""))).Select(note => note.Key));
    }
}
