using DetailGen.Analysis.Heat;

namespace DetailGen.Drawing.Sheets;

/// <summary>What stands on the thermal sheet: the simulated field, and all its words.</summary>
/// <param name="Airs">By the names of <see cref="AirBeside"/>.</param>
/// <param name="Coldest">Beside the coldest inside surface, line by line.</param>
/// <param name="Isotherms">What the lines show, for the key.</param>
/// <param name="Flux">What the lines of flow show, for the key.</param>
/// <param name="DewPoint">What the line of the dew point shows, for the key.</param>
/// <param name="DewPointFigure">Written in that line.</param>
/// <param name="Model">What the outlines show, for the key.</param>
/// <param name="Mark">What the mark of the coldest surface shows, for the key.</param>
/// <param name="MarkBeyond">The same where that lies beyond what is drawn.</param>
/// <param name="Tables">In the order of printing.</param>
/// <param name="Lists">Below the tables.</param>
public sealed record ThermalText(
    ThermalPicture Picture, IReadOnlyList<AirWords> Airs, IReadOnlyList<string> Coldest, string Isotherms, string Flux, string DewPoint, string DewPointFigure, string Model, string Mark, string MarkBeyond,
    IReadOnlyList<TextTable> Tables, IReadOnlyList<TextList> Lists);

/// <summary>What is written where the air of an environment is.</summary>
public sealed record AirWords(string Air, string Title, IReadOnlyList<string> Lines);

/// <summary>A table in words.</summary>
/// <param name="Rows">A cell for each column.</param>
public sealed record TextTable(string Title, IReadOnlyList<TextColumn> Columns, IReadOnlyList<IReadOnlyList<string>> Rows);

/// <summary>A column of a table in words.</summary>
/// <param name="Head">Line by line.</param>
/// <param name="IsFigures">Right-justified and as wide as it needs.</param>
public sealed record TextColumn(IReadOnlyList<string> Head, bool IsFigures = false);

/// <summary>Numbered paragraphs under a title.</summary>
public sealed record TextList(string Title, IReadOnlyList<string> Paragraphs);
