using DetailGen.Drawing.Emitters.Plain;
using DetailGen.Drawing.Scenes;
using SkiaSharp;

namespace DetailGen.Drawing.Emitters.Pdf;

/// <summary>All pages as PDF, lines and letters as such, the page as large as the trimmed sheet, so that it prints at true scale.</summary>
internal sealed class PdfEmitter : IEmitter
{
    // 72 points are an inch of 25.4 mm.
    private const double PointsPerMillimetre = 72 / 25.4;

    public string Extension => "pdf";

    public void Emit(Scene scene, Stream output)
    {
        using var written = new MemoryStream();
        Draw(scene, written);
        var sizes = scene.Pages.Select(page => (page.Width * PointsPerMillimetre, page.Height * PointsPerMillimetre)).ToArray();
        PdfFinish.Write(written.GetBuffer().AsSpan(0, (int)written.Length), sizes, scene.Identity.Date, output);
    }

    private static void Draw(Scene scene, Stream output)
    {
        using var target = new SKManagedWStream(output);
        var used = UsedLetters.Of(scene);
        using var faces = scene.Typeface.FacesOf(used.Regular, used.Bold); // this build of the renderer embeds fonts whole
        using var document = SKDocument.CreatePdf(target, About(scene.Identity));
        foreach (var page in scene.Pages)
        {
            // Whole points, with the sheet's lower left corner in theirs: the box is cut to the sheet afterwards.
            var (width, height) = (Math.Ceiling(page.Width * PointsPerMillimetre), Math.Ceiling(page.Height * PointsPerMillimetre));
            var canvas = document.BeginPage((float)width, (float)height);
            using var sink = new SkiaSink(canvas, scene.Typeface, faces, height / PointsPerMillimetre, PointsPerMillimetre, leastWidth: 0);
            new Painter(scene, sink).Paint(page);
            document.EndPage();
        }

        document.Close();
    }

    private static SKDocumentPdfMetadata About(Identity identity)
    {
        var about = new SKDocumentPdfMetadata(SKDocumentPdfMetadata.DefaultRasterDpi)
        {
            Title = identity.Title,
            Author = identity.Author,
            Subject = identity.Project,
            Keywords = string.Join(' ', new[] { identity.Number, identity.Revision }.Where(part => part.Length > 0)),
            Creator = "DetailGen",
            Producer = "DetailGen",
        };
        if (identity.Date is { } date)
        {
            about.Creation = date.ToDateTime(TimeOnly.MinValue, DateTimeKind.Utc);
        }

        return about;
    }
}
