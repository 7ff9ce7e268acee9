namespace DetailGen.Details.Reading;

/// <summary>A place in a text; line and column from 1.</summary>
/// <param name="File">As the user gave it, or <c>--set</c> for the command line.</param>
public readonly record struct Mark(string File, int Line, int Column)
{
    public override string ToString() => $"{File}:{Line}:{Column}";
}

/// <summary>A fault in what somebody wrote: one sentence in trade words, and what to write instead.</summary>
/// <param name="Code">Stable word for scripts, such as <c>unknown-key</c>.</param>
/// <param name="Key">The key it concerns, if any.</param>
/// <param name="Value">The value as written, if any.</param>
public sealed record Diagnostic(string Code, Mark At, string Reason, string? Hint = null, string? Key = null, string? Value = null);
