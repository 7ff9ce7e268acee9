using System.Globalization;

namespace DetailGen.Dxf.Reading;

/// <summary>Values of tags as numbers, whatever the machine's culture.</summary>
internal static class Values
{
    /// <summary>A finite number; false for any other text, an empty one too.</summary>
    public static bool TryNumber(ReadOnlySpan<byte> value, out double number) =>
        double.TryParse(value, NumberStyles.Float, CultureInfo.InvariantCulture, out number) && double.IsFinite(number);

    /// <summary>A whole number, also one written as 1.0.</summary>
    public static bool TryInteger(ReadOnlySpan<byte> value, out long integer)
    {
        if (long.TryParse(value, NumberStyles.Integer, CultureInfo.InvariantCulture, out integer))
        {
            return true;
        }

        var isWhole = TryNumber(value, out var number) && number == Math.Truncate(number) && Math.Abs(number) < 1e15;
        integer = isWhole ? (long)number : 0;
        return isWhole;
    }

    /// <summary>A record's handle; 0 for none or for text that is no handle.</summary>
    public static ulong Handle(ReadOnlySpan<byte> value) =>
        ulong.TryParse(value, NumberStyles.AllowHexSpecifier | NumberStyles.AllowLeadingWhite | NumberStyles.AllowTrailingWhite, CultureInfo.InvariantCulture, out var handle) ? handle : 0;
}
