namespace DetailGen.Drawing.Views;

/// <summary>What the drawn geometry could not keep.</summary>
internal static class Faults
{
    /// <summary>Least white between two drawn sheets, mm.</summary>
    public const double LeastGap = 0.35;

    public static IReadOnlyList<DrawingFault> Of(IReadOnlyList<LaidSheet> laid, FilledParts filled, double scale)
    {
        var faults = new List<DrawingFault>();
        var bodies = laid.Where(sheet => !sheet.Seen.IsEmpty).ToArray();
        for (var i = 0; i < bodies.Length; i++)
        {
            for (var j = i + 1; j < bodies.Length; j++)
            {
                var (a, b) = (bodies[i], bodies[j]);
                if (a.Seen.Bounds.Meets(b.Seen.Bounds, LeastGap) && a.Seen.Distance(b.Seen) < LeastGap - 0.005)
                {
                    faults.Add(new("sheet-merge", [a.Part.Id, b.Part.Id], $"{a.Part.Name} and {b.Part.Name} come nearer than {LeastGap} mm on paper."));
                }
            }

            var sheet = bodies[i];
            var most = sheet.Stray(scale);
            if (most > SheetStyles.Budget)
            {
                faults.Add(new("budget", [sheet.Part.Id], $"{sheet.Part.Name} is drawn {most.ToString("0.0", System.Globalization.CultureInfo.InvariantCulture)} mm from its true place."));
            }
        }

        faults.AddRange(filled.Same.Select(pair => new DrawingFault("fill-same", [pair.Item1, pair.Item2], "Two neighbours of one fill share its variant.")));
        return faults;
    }
}
