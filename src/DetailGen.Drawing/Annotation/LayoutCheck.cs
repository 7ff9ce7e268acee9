using DetailGen.Drawing.Scenes;
using DetailGen.Sections;

namespace DetailGen.Drawing.Annotation;

/// <summary>A fault on the finished sheet.</summary>
/// <param name="Check">Id of the reviewer's list, such as <c>text-overlap</c>.</param>
/// <param name="Amount">mm or mm², where it has a size.</param>
public sealed record LayoutFault(string Check, string Subject, string Text, double Amount = 0);

/// <summary>
/// Counts the hard faults of finished annotation from its items alone: it shares no code with the placing but plane geometry, so that a mistake there shows here.
/// </summary>
public static class LayoutCheck
{
    private const double LeaderGap = 0.65;
    private const double TextGap = 0.9;
    private const double Touch = 0.02;

    public static IReadOnlyList<LayoutFault> Faults(IReadOnlyList<Item> items, AnnotationRequest request)
    {
        var marks = Marks.Of(items, request.View.TextSizes.Typeface);
        var view = request.View;
        MarkedLine[] lines = [.. marks.Lines, .. Strokes(view)];
        var parts = view.Parts.Where(part => !part.Visible.IsEmpty).ToDictionary(part => part.Id, StringComparer.Ordinal);
        return
        [
            .. Zone(marks, view.Zone), .. TextOnText(marks), .. OnSheet(marks, view), .. TextOnLine(marks, lines), .. TextOnPart(marks, view), .. LeaderOnLeader(marks), .. LeaderOnLine(marks, lines),
            .. Leaders(marks, view, parts), .. Alignment(marks), .. Dimensions(marks), .. Chains(items, request.Section),
        ];
    }

    private static IEnumerable<LayoutFault> Zone(Marks marks, PaperBox zone) =>
        from text in marks.Texts
        let beyond = Math.Max(Math.Max(zone.Left - text.Box.Left, text.Box.Right - zone.Right), Math.Max(zone.Bottom - text.Box.Bottom, text.Box.Top - zone.Top))
        where beyond > Touch
        select new LayoutFault("frame-cross", text.Owner, $"\"{text.Words}\" leaves its zone.", beyond);

    private static IEnumerable<LayoutFault> TextOnText(Marks marks)
    {
        for (var i = 0; i < marks.Texts.Count; i++)
        {
            for (var j = 0; j < i; j++)
            {
                var (a, b) = (marks.Texts[j], marks.Texts[i]);
                var across = Math.Min(a.Box.Right, b.Box.Right) - Math.Max(a.Box.Left, b.Box.Left);
                var up = Math.Min(a.Box.Top, b.Box.Top) - Math.Max(a.Box.Bottom, b.Box.Bottom);
                if (across > Touch && up > Touch)
                {
                    yield return new("text-overlap", a.Owner, $"\"{a.Words}\" and \"{b.Words}\" overlap.", across * up);
                }
                else if (a.Owner != b.Owner && Lines.Gap(a.Box, b.Box) < TextGap)
                {
                    yield return new("text-gap", a.Owner, $"\"{a.Words}\" and \"{b.Words}\" nearly touch.", Lines.Gap(a.Box, b.Box));
                }
            }
        }
    }

    private static IEnumerable<LayoutFault> OnSheet(Marks marks, AnnotatedView view) =>
        from taken in view.Taken
        from owner in marks.Texts.Where(text => Lines.Gap(text.Box, taken) < TextGap).Select(text => text.Owner)
            .Concat(marks.Lines.Where(line => Lines.Meets(taken, line.From, line.To)).Select(line => line.Owner)).Distinct(StringComparer.Ordinal)
        select new LayoutFault("text-overlap", owner, $"What belongs to {owner} lies on the sheet's own text.");

    private static IEnumerable<LayoutFault> TextOnLine(Marks marks, MarkedLine[] lines)
    {
        foreach (var text in marks.Texts)
        {
            foreach (var line in lines)
            {
                if (Lines.Meets(text.Box.Grow(text.Owner == line.Owner ? -Touch : line.Kind == LineKind.Leader ? 0.6 : 0.3), line.From, line.To))
                {
                    yield return new("text-overlap", text.Owner, $"\"{text.Words}\" lies on a line of {line.Owner}.");
                }
            }
        }
    }

    private static IEnumerable<LayoutFault> TextOnPart(Marks marks, AnnotatedView view) =>
        from text in marks.Texts
        let box = new Bounds(text.Box.Left, text.Box.Bottom, text.Box.Right, text.Box.Top)
        from part in view.Parts
        where part.Look != Look.Open && part.Visible.Bounds.Meets(box)
        let area = part.Visible.Intersect(Region.Box(box)).Area
        where area > Touch
        select new LayoutFault("text-on-fill", text.Owner, $"\"{text.Words}\" lies on {part.Id}.", area);

    private static IEnumerable<LayoutFault> LeaderOnLeader(Marks marks)
    {
        var leaders = marks.Leaders;
        var pieces = leaders.ConvertAll(leader => Pieces(leader).ToArray());
        for (var i = 0; i < leaders.Count; i++)
        {
            for (var j = 0; j < i; j++)
            {
                if (Array.Exists(pieces[i], a => Array.Exists(pieces[j], b => Lines.Near(a.From, a.To, b.From, b.To, LeaderGap))))
                {
                    yield return new("lead-cross", leaders[j].Owner, $"The leaders of {leaders[j].Owner} and {leaders[i].Owner} cross or touch.");
                }

                if ((leaders[i].Tip - leaders[j].Tip).Length < 2 - Touch)
                {
                    yield return new("lead-end", leaders[j].Owner, $"The ends of {leaders[j].Owner} and {leaders[i].Owner} come too near.");
                }
            }
        }
    }

    private static IEnumerable<LayoutFault> LeaderOnLine(Marks marks, MarkedLine[] lines)
    {
        foreach (var leader in marks.Leaders)
        {
            foreach (var piece in Pieces(leader))
            {
                foreach (var line in lines)
                {
                    if (line.Kind is LineKind.Hard && line.Owner != leader.Owner && Lines.Near(piece.From, piece.To, line.From, line.To, 0.3))
                    {
                        yield return new("lead-dim", leader.Owner, $"The leader meets a line of {line.Owner}.");
                    }
                }

                foreach (var text in marks.Texts.Where(text => text.Owner != leader.Owner && Lines.Meets(text.Box.Grow(0.6), piece.From, piece.To)))
                {
                    yield return new("lead-dim", leader.Owner, $"The leader meets \"{text.Words}\".");
                }
            }
        }
    }

    private static IEnumerable<LayoutFault> Leaders(Marks marks, AnnotatedView view, Dictionary<string, NotedPart> parts)
    {
        foreach (var leader in marks.Leaders)
        {
            if (leader.Points.Count > 3)
            {
                yield return new("lead-bend", leader.Owner, "The leader bends more than once.");
            }

            foreach (var (from, to) in Pieces(leader))
            {
                var angle = Lines.Between(Lines.Angle(from, to), 0);
                if (!((double[])[0, 30, 45, 60, 75]).Any(allowed => Math.Abs(allowed - angle) < 0.1))
                {
                    yield return new("lead-bend", leader.Owner, "The leader runs at an angle that is not in the set.", angle);
                }
            }

            // A shoulder from a ragged line end does not count.
            if ((leader.Points[^1] - leader.Points[^2]).Length > view.LongestLeader)
            {
                yield return new("lead-long", leader.Owner, "The leader is too long.", leader.Length);
            }

            if (leader.PartId is not { } id || !parts.TryGetValue(id, out var part))
            {
                yield return new("lead-target", leader.Owner, "The leader names no visible part.");
                continue;
            }

            var tip = new Point(leader.Tip.X, leader.Tip.Y);
            if (leader.IsArrow ? part.Visible.DistanceToEdge(tip) > 0.1 : !part.Visible.Contains(tip))
            {
                yield return new("lead-target", leader.Owner, $"The leader does not end in {id}.");
            }

            var run = (leader.Points[^1] - leader.Points[^2]).Length;
            if (run > 0 && !leader.IsArrow && Array.Exists([.. part.FillAngles], fill => Lines.Between(fill, Lines.Angle(leader.Points[^2], leader.Points[^1])) < 9.9))
            {
                yield return new("lead-parallel", leader.Owner, $"The leader runs along the fill of {id}.");
            }
        }
    }

    /// <summary>Blocks of a column begin at one edge.</summary>
    private static IEnumerable<LayoutFault> Alignment(Marks marks)
    {
        var lefts = marks.Texts.GroupBy(text => text.Owner, StringComparer.Ordinal).ToDictionary(texts => texts.Key, texts => texts.Min(text => text.Box.Left), StringComparer.Ordinal);
        return from leader in marks.Leaders
               where leader.Points.Count == 3
               group leader by (Math.Round(leader.Points[1].X, 1), Math.Sign(leader.Points[0].X - leader.Points[1].X)) into column
               let first = column.Min(leader => lefts[leader.Owner])
               from leader in column
               where lefts[leader.Owner] - first > 0.1
               select new LayoutFault("note-align", leader.Owner, "The block is out of line with its column.", lefts[leader.Owner] - first);
    }

    private static IEnumerable<LayoutFault> Dimensions(Marks marks)
    {
        foreach (var (dimension, shown) in marks.Dimensions.Select(dimension => (dimension, Marks.Number(dimension.Figure))))
        {
            if (Math.Abs(shown - dimension.Measured) > 0.5 + 1e-6)
            {
                yield return new("dim-true", dimension.MeasureId, $"{dimension.Figure} is shown for {dimension.Measured}.", Math.Abs(shown - dimension.Measured));
            }
        }

        var lines = marks.Lines.Where(line => line.Kind == LineKind.Hard && line.Owner.StartsWith("dimension ", StringComparison.Ordinal)).ToArray();
        for (var i = 0; i < lines.Length; i++)
        {
            for (var j = 0; j < i; j++)
            {
                if (Lines.Cross(lines[i].From, lines[i].To, lines[j].From, lines[j].To))
                {
                    yield return new("dim-overlap", lines[j].Owner, $"The dimension lines of {lines[j].Owner} and {lines[i].Owner} cross.");
                }
            }
        }
    }

    /// <summary>Shown parts of a chain add up to the shown whole.</summary>
    private static IEnumerable<LayoutFault> Chains(IReadOnlyList<Item> items, Section section)
    {
        var shown = items.OfType<Dimension>().GroupBy(item => item.MeasureId, StringComparer.Ordinal).ToDictionary(same => same.Key, same => Marks.Number(same.First().Figure), StringComparer.Ordinal);
        foreach (var chain in section.Measures.Where(measure => shown.ContainsKey(measure.Id) && measure.Chain is not ("" or Sections.Chains.Close)).GroupBy(measure => measure.Chain, StringComparer.Ordinal))
        {
            var members = chain.ToArray();
            foreach (var whole in members)
            {
                var (low, high) = (Math.Min(End(whole.From, whole), End(whole.To, whole)), Math.Max(End(whole.From, whole), End(whole.To, whole)));
                var parts = members.Where(part => part.Axis == whole.Axis && part.Tier < whole.Tier && End(part.From, part) >= low - 0.01 && End(part.From, part) <= high + 0.01
                    && End(part.To, part) >= low - 0.01 && End(part.To, part) <= high + 0.01).ToArray();
                var lowest = parts.Length == 0 ? [] : parts.Where(part => part.Tier == parts.Min(other => other.Tier)).ToArray();
                var covered = lowest.Sum(part => part.Value);
                if (lowest.Length > 1 && Math.Abs(covered - whole.Value) < 0.01 && Math.Abs(lowest.Sum(part => shown[part.Id]) - shown[whole.Id]) > 0.01)
                {
                    yield return new("dim-sum", whole.Id, $"The parts shown do not add up to {shown[whole.Id]}.");
                }
            }
        }

        static double End(Point point, Measure measure) => measure.Axis == Axis.Horizontal ? point.X : point.Y;
    }

    private static IEnumerable<(PaperPoint From, PaperPoint To)> Pieces(MarkedLeader leader) =>
        leader.Points.Zip(leader.Points.Skip(1));

    private static IEnumerable<MarkedLine> Strokes(AnnotatedView view) =>
        view.Lines.Concat(view.SheetLines).SelectMany(stroke => stroke.Points.Zip(stroke.Points.Skip(1)).Select(piece => new MarkedLine("the drawing", piece.First, piece.Second, LineKind.Hard)));
}
