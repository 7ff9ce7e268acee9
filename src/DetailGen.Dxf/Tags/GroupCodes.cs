namespace DetailGen.Dxf.Tags;

/// <summary>What kind of value stands behind a group code.</summary>
/// <remarks>The format's published reference, "Group codes in numerical order".</remarks>
internal static class GroupCodes
{
    /// <summary>The largest code that is written.</summary>
    public const int Highest = 1071;

    public static bool IsNumber(int code) =>
        code is (>= 10 and <= 59) or (>= 110 and <= 149) or (>= 210 and <= 239) or (>= 460 and <= 469) or (>= 1010 and <= 1059);

    public static bool IsInteger(int code) =>
        code is (>= 60 and <= 79) or (>= 90 and <= 99) or (>= 160 and <= 179) or (>= 270 and <= 299) or (>= 370 and <= 389)
            or (>= 400 and <= 409) or (>= 420 and <= 429) or (>= 440 and <= 459) or (>= 1060 and <= 1071);

    public static bool IsString(int code) =>
        code is (>= 0 and <= 9) or (>= 100 and <= 102) or (>= 300 and <= 309) or (>= 410 and <= 419) or (>= 430 and <= 439)
            or (>= 470 and <= 479) or (>= 1000 and <= 1003);
}
