using System.Text;
using DetailGen.Dxf.Document;
using DetailGen.Dxf.Tags;

namespace DetailGen.Dxf.Writing;

/// <summary>Writes a drawing as DXF text: AC1024, UTF-8, CRLF. The same document gives the same bytes, wherever and whenever.</summary>
public static class DxfWriter
{
    /// <summary>Writes the whole file to a stream. The document is checked first, so a faulty one leaves the stream untouched.</summary>
    /// <exception cref="ArgumentException">The document cannot be drawn as it is meant: a name without definition, a number that is
    /// not finite or beyond 1e9, a text too long, a pattern with two definitions, and the like; the message names the entity.</exception>
    public static void Write(DxfDocument document, Stream output)
    {
        ArgumentNullException.ThrowIfNull(document);
        ArgumentNullException.ThrowIfNull(output);
        var plan = new WritePlan(document);
        var handles = new Handles(plan);
        var digest = document.Provenance is null ? null : ContentDigest.Of(plan);

        using var writer = new TagWriter();
        var version = HeaderSection.Write(writer, plan, handles.Seed);
        var entities = new EntityWriter(writer, handles, digest);
        ClassesSection.Write(writer);
        TablesSection.Write(writer, plan, handles);
        BlocksSection.Write(writer, plan, entities);
        writer.Text(0, "SECTION");
        writer.Text(2, "ENTITIES");
        entities.WriteContent(plan.Model);
        entities.WriteContent(plan.Papers[0]);
        writer.Text(0, "ENDSEC");
        ObjectsSection.Write(writer, plan, handles, digest);
        writer.Text(0, "EOF");

        // Without a digest the version is told by the bytes themselves, its own place in them filled with noughts.
        writer.Fill(version, HeaderSection.IdFrom(digest is null ? writer.Written : Encoding.ASCII.GetBytes(digest.Whole)));
        output.Write(writer.Written);
    }
}
