namespace DetailGen.Library.Wording;

/// <summary>Status codes in words.</summary>
/// <remarks>UK National Annex to BS EN ISO 19650-2, editions 2018 and 2021, as compared in two trade articles (secondary texts).</remarks>
internal static class StatusWords
{
    private static readonly (string Code, string? Edition2021, string? Edition2018)[] Table =
    [
        ("S0", "developed within a task team", "initial status"),
        ("S1", "coordination", "coordination"),
        ("S2", "information or reference", "information"),
        ("S3", "review and comment", "review and comment"),
        ("S4", "review and authorization", "stage approval"),
        ("S5", "review and acceptance", null),
        ("S6", null, "authorization of the project information model"),
        ("S7", null, "authorization of the asset information model"),
        ("CR", null, "as-constructed record"),
    ];

    /// <summary>Such as "S2: for information or reference; not for construction"; empty for no code.</summary>
    /// <param name="edition">2018 or 2021.</param>
    internal static string Of(string code, string edition)
    {
        if (code.Length == 0)
        {
            return "";
        }

        var row = Table.FirstOrDefault(row => row.Code == code);
        var meaning = row.Code is null ? Family(code) : (edition == "2018" ? row.Edition2018 ?? row.Edition2021 : row.Edition2021 ?? row.Edition2018)!;
        var words = code is "CR" || row.Code is null ? $"{code}: {meaning}" : $"{code}: for {meaning}";
        return code[0] == 'S' ? words + "; not for construction" : words;
    }

    private static string Family(string code) => code[0] == 'B' ? "partially signed off; use with its comments" : "authorized and accepted, as the project says";
}
