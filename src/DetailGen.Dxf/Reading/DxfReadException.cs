namespace DetailGen.Dxf.Reading;

/// <summary>The file cannot be read as a drawing: where it stops being one, and why.</summary>
/// <param name="line">From 1, of a text file; the byte from 0 of a binary one.</param>
public sealed class DxfReadException(int line, string reason) : Exception(reason)
{
    public int Line { get; } = line;
}

/// <summary>A departure from the format that does not stop reading.</summary>
/// <param name="Line">From 1, of a text file; the byte from 0 of a binary one.</param>
public readonly record struct Finding(int Line, string Text);
