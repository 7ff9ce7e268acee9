using System.Globalization;
using System.Text;

namespace DetailGen.Details.Quantities;

/// <summary>Reads <c>150 mm</c>, <c>0.15 m</c>, <c>1:40</c>, <c>5°</c>, <c>0.15 W/m²K</c> and bare numbers, the same in every culture.</summary>
public static class QuantityReader
{
    // spelling without blanks, brackets, dots and raised figures → kind, and the factor to its unit
    private static readonly Spelled[] Units =
    [
        new("mm", QuantityKind.Length, 1), new("m", QuantityKind.Length, 1000), new("cm", QuantityKind.Length, 10),
        new("µm", QuantityKind.Length, 0.001m), new("um", QuantityKind.Length, 0.001m),
        new("°", QuantityKind.Angle, 1), new("deg", QuantityKind.Angle, 1), new("degrees", QuantityKind.Angle, 1),
        new("W/m2K", QuantityKind.Transmittance, 1), new("W/mK", QuantityKind.Conductivity, 1), new("m2K/W", QuantityKind.Resistance, 1),
        new("kg/m3", QuantityKind.Density, 1), new("kg/m2", QuantityKind.AreaMass, 1), new("MNs/g", QuantityKind.VapourResistance, 1),
        new("kN/m2", QuantityKind.Pressure, 1), new("%", QuantityKind.Percent, 1),
    ];

    /// <summary>Reads a text that is nothing but a quantity.</summary>
    /// <returns>The quantity, or what is wrong with the text.</returns>
    public static Quantity? Read(string text, out QuantityFault fault)
    {
        fault = QuantityFault.None;
        var trimmed = text.AsSpan().Trim();
        if (trimmed.Length is 0 or > 60)
        {
            fault = QuantityFault.NoNumber;
            return null;
        }

        var length = NumberLength(trimmed);
        var after = trimmed[length..].TrimStart();
        if (length > 0 && after.StartsWith(":"))
        {
            return Ratio(trimmed[..length], after[1..].Trim(), out fault);
        }

        if (length > 0 && after.StartsWith(",") && after.Length > 1 && char.IsAsciiDigit(after[1]))
        {
            fault = QuantityFault.Comma;
            return null;
        }

        if (length > 0 && Misplaced(after) is { } misplaced)
        {
            fault = misplaced;
            return null;
        }

        if (length == 0 || !TryNumber(trimmed[..length], out var number))
        {
            fault = length > MostDigits ? QuantityFault.Digits : QuantityFault.NoNumber;
            return null;
        }

        if (after.IsEmpty)
        {
            return new(QuantityKind.Bare, number);
        }

        var unit = Plain(after);
        foreach (var known in Units)
        {
            if (string.Equals(known.Unit, unit, StringComparison.Ordinal))
            {
                return new(known.Kind, number * known.Factor);
            }
        }

        fault = QuantityFault.Unit;
        return null;
    }

    /// <summary>Spelling in messages and output; empty for a bare number.</summary>
    public static string UnitOf(QuantityKind kind) => kind switch
    {
        QuantityKind.Length => "mm",
        QuantityKind.Angle => "°",
        QuantityKind.Transmittance => "W/m²K",
        QuantityKind.Conductivity => "W/mK",
        QuantityKind.Resistance => "m²K/W",
        QuantityKind.Density => "kg/m³",
        QuantityKind.AreaMass => "kg/m²",
        QuantityKind.VapourResistance => "MNs/g",
        QuantityKind.Pressure => "kN/m²",
        QuantityKind.Percent => "%",
        QuantityKind.Ratio => "1:n",
        _ => "",
    };

    private static Quantity? Ratio(ReadOnlySpan<char> one, ReadOnlySpan<char> many, out QuantityFault fault)
    {
        fault = many.Length > MostDigits && NumberLength(many) == many.Length ? QuantityFault.Digits : QuantityFault.Ratio;
        if (!TryNumber(one, out var first) || first != 1 || NumberLength(many) != many.Length || !TryNumber(many, out var n) || n < 1 || !decimal.IsInteger(n))
        {
            return null;
        }

        fault = QuantityFault.None;
        return new(QuantityKind.Ratio, n);
    }

    // what goes on with a number where its unit should begin
    private static QuantityFault? Misplaced(ReadOnlySpan<char> after) => after switch
    {
        ['e' or 'E', .. var power] when power.TrimStart("+-\u2212") is [>= '0' and <= '9', ..] => QuantityFault.Exponent,
        ['_' or '\'' or '’', >= '0' and <= '9', ..] or [>= '0' and <= '9', ..] => QuantityFault.Groups,
        _ => null,
    };

    private static int NumberLength(ReadOnlySpan<char> text)
    {
        var i = text.Length > 0 && text[0] is '-' or '+' or '\u2212' ? 1 : 0;
        while (i < text.Length && (char.IsAsciiDigit(text[i]) || text[i] == '.'))
        {
            i++;
        }

        return i;
    }

    /// <summary>Sign and point among them: every conversion of such a number stays inside decimal.</summary>
    private const int MostDigits = 17;

    private static bool TryNumber(ReadOnlySpan<char> text, out decimal number)
    {
        number = 0;
        return text.Length <= MostDigits && decimal.TryParse(
            text.ToString().Replace('\u2212', '-'), NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out number);
    }

    private sealed record Spelled(string Unit, QuantityKind Kind, decimal Factor);

    private static string Plain(ReadOnlySpan<char> unit)
    {
        var plain = new StringBuilder();
        foreach (var sign in unit)
        {
            plain.Append(sign switch
            {
                ' ' or '(' or ')' or '.' or '·' or '*' or '^' or '⋅' => "",
                '²' => "2",
                '³' => "3",
                'μ' => "µ", // Greek mu for the micro sign
                _ => sign.ToString(),
            });
        }

        return plain.ToString();
    }
}

/// <summary>What is wrong with a written quantity.</summary>
public enum QuantityFault
{
    None,

    /// <summary>It does not begin with a number.</summary>
    NoNumber,

    /// <summary>A comma stands where the decimal point should.</summary>
    Comma,

    /// <summary>The number has a power of ten, as in 1e3.</summary>
    Exponent,

    /// <summary>Something stands between the digits, as in 1_000.</summary>
    Groups,

    /// <summary>It has more digits than are read.</summary>
    Digits,

    /// <summary>The unit is not known.</summary>
    Unit,

    /// <summary>It is no 1:n with a whole n.</summary>
    Ratio,
}
