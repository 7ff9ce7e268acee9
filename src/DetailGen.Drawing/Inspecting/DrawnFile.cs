using DetailGen.Dxf.Entities;
using DetailGen.Dxf.Reading;

namespace DetailGen.Drawing.Inspecting;

/// <summary>A drawing file read back.</summary>
/// <param name="Parameters">The preset and its solved values as JSON; null where the file carries none or a damaged one.</param>
/// <param name="Edits">What was edited since issue; null where the file does not say what was issued.</param>
/// <param name="Findings">Departures from the format, by line.</param>
public sealed record DrawnFile(string? Parameters, IReadOnlyList<FileEdit>? Edits, IReadOnlyList<(int Line, string Text)> Findings)
{
    /// <summary>Largest file that is read, in bytes.</summary>
    public static int Largest => ReadLimits.Usual.Bytes;

    /// <exception cref="NotADrawingException">The file is no drawing, or one beyond the limits of size.</exception>
    public static DrawnFile Read(Stream input)
    {
        try
        {
            var drawing = DxfDrawing.Read(input);
            return new(
                drawing.Provenance?.Parameters,
                drawing.Issued is null ? null : [.. DrawingEdits.Of(drawing).Select(Told)],
                [.. drawing.File.Findings.Select(finding => (finding.Line, Shown.Clean(finding.Text)))]);
        }
        catch (DxfReadException fault)
        {
            throw new NotADrawingException(fault.Line, Shown.Clean(fault.Message), fault);
        }
    }

    private static FileEdit Told(Edit edit) => new(
        edit.Kind.ToString().ToLowerInvariant(), Shown.Clean(edit.Part), edit.Count, edit.Kind == EditKind.Moved ? (edit.By.X, edit.By.Y) : null,
        [.. edit.Entities.Select(entity => new FileEntity(Shown.KindOf(entity), Shown.Clean(entity.Layer), Shown.PlaceOf(entity.Space), entity.Line, Shown.WordsOf(entity.Entity)))]);

    /// <summary>What is told of an untrusted file: no control letters, and no more than a line.</summary>
    private static class Shown
    {
        private const int MostLetters = 200;

        public static string Clean(string text) =>
            string.Concat(text.Take(MostLetters).Select(letter => char.IsControl(letter) || char.IsSurrogate(letter) ? '\uFFFD' : letter)) + (text.Length > MostLetters ? "…" : "");

        public static string KindOf(ReadEntity entity) => entity.Entity switch
        {
            Line => "line",
            Circle => "circle",
            Arc => "arc",
            Ellipse => "ellipse",
            Polyline => "line",
            Hatch => "fill",
            Solid => "arrow",
            Text or Mtext => "text",
            Dimension => "dimension",
            Insert => "title block",
            _ => Clean(entity.Kind),
        };

        public static string PlaceOf(string space) => space.ToUpperInvariant() switch
        {
            "*MODEL_SPACE" => "model",
            var paper when paper.StartsWith("*PAPER_SPACE", StringComparison.Ordinal) => "sheet",
            _ => "block " + Clean(space),
        };

        public static string? WordsOf(Entity? entity) => entity switch
        {
            Text text => Clean(text.Content),
            Mtext mtext => Clean(string.Join(' ', mtext.Lines)),
            Dimension dimension => Dimension.Written(dimension.Measured),
            Insert insert => Clean(string.Join(", ", insert.Values.Where(value => value.Value.Length > 0).Select(value => $"{value.Tag}: {value.Value}"))),
            _ => null,
        };
    }
}

/// <summary>An edit since issue.</summary>
/// <param name="Kind">changed, moved, doubled, missing, added or hidden.</param>
/// <param name="Part">Id of the part, or <c>layer:</c> and a name for what belongs to none.</param>
/// <param name="By">How far a part was moved, mm.</param>
/// <param name="Entities">Those that are there now.</param>
public sealed record FileEdit(string Kind, string Part, int Count, (double X, double Y)? By, IReadOnlyList<FileEntity> Entities);

/// <summary>Something drawn.</summary>
/// <param name="Kind">In plain words; the record's name where this project draws no such thing.</param>
/// <param name="Place">model, sheet, or block and its name.</param>
/// <param name="Line">Of the file.</param>
/// <param name="Words">What it says, or the length that it measures.</param>
public sealed record FileEntity(string Kind, string Layer, string Place, int Line, string? Words);

/// <summary>A file is no drawing, or one beyond the limits of size.</summary>
/// <param name="line">Where it stops being one.</param>
public sealed class NotADrawingException(int line, string reason, Exception cause) : Exception(reason, cause)
{
    public int Line { get; } = line;
}
