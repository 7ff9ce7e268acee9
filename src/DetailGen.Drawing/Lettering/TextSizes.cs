namespace DetailGen.Drawing.Lettering;

/// <summary>The heights of capitals on a sheet, mm: no more than these four, and every distance on paper that hangs on letters follows from them.</summary>
/// <remarks>Nominal sizes after ISO 3098-1 (read in a secondary text); which text takes which is a decision of this project.</remarks>
/// <param name="Notes">Notes, dimensions, levels, tables.</param>
/// <param name="Titles">Of views, tables and the sheet, and the names of the spaces.</param>
/// <param name="Numbers">Number, status and revision of the sheet.</param>
/// <param name="FieldLabels">What the fields of the title block are called.</param>
public sealed record TextSizes(double Notes, double Titles, double Numbers, double FieldLabels)
{
    /// <summary>On a sheet that is copied at full size; distances on paper were decided beside these.</summary>
    public static TextSizes Usual { get; } = new(2.5, 3.5, 5, 1.8);

    /// <summary>Whose letters they are.</summary>
    public Typeface Typeface { get; init; } = Typeface.Shipped;

    /// <summary>A distance decided beside notes of the usual height, beside these.</summary>
    internal double ByNotes(double usual) => usual * (Notes / Usual.Notes);

    /// <summary>A width decided for a word in notes of the usual height, in the letters that ship: for the word in these.</summary>
    internal double ByWord(double usual, string word, bool bold = false) => ByNotes(usual) * Math.Max(1, Typeface.Width(word, 1, bold) / Typeface.Shipped.Width(word, 1, bold));

    /// <summary>A distance decided beside titles of the usual height, beside these.</summary>
    internal double ByTitles(double usual) => usual * (Titles / Usual.Titles);
}
