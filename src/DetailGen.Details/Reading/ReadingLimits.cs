namespace DetailGen.Details.Reading;

/// <summary>How much a text may ask of the reader.</summary>
/// <param name="Bytes">Of the whole file; told before anything is read.</param>
/// <param name="Depth">Lists and maps inside one another.</param>
/// <param name="Nodes">Keys and values of the whole text.</param>
public sealed record ReadingLimits(long Bytes, int Depth, int Nodes)
{
    /// <summary>For presets and everything else that people write by hand.</summary>
    public static ReadingLimits Usual { get; } = new(1 << 20, 32, 50_000);
}

/// <summary>A text as a tree, with every fault of its form. There may be both: a duplicate key is a fault, and the tree goes on.</summary>
/// <param name="Root">Null where nothing could be made of the text.</param>
public sealed record ReadText(Node? Root, IReadOnlyList<Diagnostic> Faults)
{
    public Outcome<Node> ToOutcome() => Faults.Count == 0 && Root is { } root ? Outcome.Good(root) : Outcome.Bad<Node>(Faults);
}
