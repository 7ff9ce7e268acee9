namespace DetailGen.Dxf.Tags;

/// <summary>What stands behind a group code, and how many bytes it takes in a binary file.</summary>
internal enum ValueKind
{
    None,

    /// <summary>Letters; in a binary file up to a nought.</summary>
    Text,

    /// <summary>Hex digits that name a record; kept as letters.</summary>
    Handle,

    /// <summary>A double.</summary>
    Number,

    /// <summary>16 bits.</summary>
    Short,

    /// <summary>32 bits.</summary>
    Integer,

    /// <summary>64 bits.</summary>
    Long,

    /// <summary>8 bits.</summary>
    Flag,

    /// <summary>Hex digits; in a binary file a length of 8 bits and the bytes.</summary>
    Bytes,
}

/// <summary>What kind of value stands behind a group code.</summary>
/// <remarks>The format's published reference, "Group codes in numerical order".</remarks>
internal static class GroupCodes
{
    /// <summary>The largest code.</summary>
    public const int Highest = 1071;

    public static bool IsNumber(int code) => KindOf(code) is ValueKind.Number;

    public static bool IsInteger(int code) => KindOf(code) is ValueKind.Short or ValueKind.Integer or ValueKind.Long or ValueKind.Flag;

    public static bool IsString(int code) => KindOf(code) is ValueKind.Text;

    public static ValueKind KindOf(int code) => code switch
    {
        5 or 105 or 1005 => ValueKind.Handle,
        >= 0 and <= 9 => ValueKind.Text,
        >= 10 and <= 59 => ValueKind.Number,
        >= 60 and <= 79 => ValueKind.Short,
        >= 90 and <= 99 => ValueKind.Integer,
        >= 100 and <= 102 or 999 => ValueKind.Text,
        >= 110 and <= 149 => ValueKind.Number,
        >= 160 and <= 169 => ValueKind.Long,
        >= 170 and <= 179 => ValueKind.Short,
        >= 210 and <= 239 => ValueKind.Number,
        >= 270 and <= 289 => ValueKind.Short,
        >= 290 and <= 299 => ValueKind.Flag,
        >= 300 and <= 309 => ValueKind.Text,
        >= 310 and <= 319 or 1004 => ValueKind.Bytes,
        >= 320 and <= 369 => ValueKind.Handle,
        >= 370 and <= 389 => ValueKind.Short,
        >= 390 and <= 399 => ValueKind.Handle,
        >= 400 and <= 409 => ValueKind.Short,
        >= 410 and <= 419 => ValueKind.Text,
        >= 420 and <= 429 => ValueKind.Integer,
        >= 430 and <= 439 => ValueKind.Text,
        >= 440 and <= 459 => ValueKind.Integer,
        >= 460 and <= 469 => ValueKind.Number,
        >= 470 and <= 479 => ValueKind.Text,
        >= 480 and <= 481 => ValueKind.Handle,
        >= 1000 and <= 1009 => ValueKind.Text,
        >= 1010 and <= 1059 => ValueKind.Number,
        >= 1060 and <= 1070 => ValueKind.Short,
        1071 => ValueKind.Integer,
        _ => ValueKind.None,
    };
}
