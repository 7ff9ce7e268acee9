namespace DetailGen.Drawing.Curves;

/// <summary>Figures against one size, with all their words.</summary>
/// <param name="Subtitle">Line by line.</param>
/// <param name="Across">What is gone through, with its unit.</param>
/// <param name="Stations">Rising.</param>
/// <param name="Stocked">Those that are sold.</param>
/// <param name="Drawn">What the detail has now; null where that is not known.</param>
/// <param name="Axes">From the top downwards; at least one.</param>
/// <param name="Notes">Below, each a paragraph.</param>
public sealed record CurveText(
    string Title, IReadOnlyList<string> Subtitle, string Across, IReadOnlyList<CurveStation> Stations, IReadOnlyList<double> Stocked, double? Drawn, IReadOnlyList<CurveAxis> Axes,
    IReadOnlyList<string> Notes);

/// <summary>A value that was calculated.</summary>
/// <param name="GoesOn">Every value between the one before and this one can be chosen too.</param>
public sealed record CurveStation(double Value, bool GoesOn);

/// <summary>One figure.</summary>
/// <param name="Title">With its unit.</param>
/// <param name="Values">One for each station.</param>
/// <param name="Limits">What is asked of it.</param>
public sealed record CurveAxis(string Title, IReadOnlyList<double> Values, IReadOnlyList<CurveLimit> Limits);

/// <summary>A limit on a figure, drawn as a level line.</summary>
/// <param name="Words">Who asks, and for what.</param>
public sealed record CurveLimit(string Words, double Value);
