namespace DetailGen.Dxf.Reading;

/// <summary>How much of an untrusted file is taken before reading stops with a message. The usual ones hold any drawing of this tool many times over.</summary>
/// <param name="Bytes">Size of the file.</param>
/// <param name="LineBytes">Length of one value.</param>
/// <param name="Records">Records that begin with group 0.</param>
/// <param name="Tags">Pairs of group code and value.</param>
public sealed record ReadLimits(int Bytes, int Tags, int Records, int LineBytes)
{
    public static ReadLimits Usual { get; } = new(64 << 20, 5_000_000, 500_000, 64 << 10);
}
