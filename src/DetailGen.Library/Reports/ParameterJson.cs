using System.Text;
using System.Text.Json;
using DetailGen.Details.Presets;

namespace DetailGen.Library.Reports;

/// <summary>What is embedded in a drawing so that it can be read back: the detail, its components and every value, in one canonical line of JSON.</summary>
internal static class ParameterJson
{
    internal static string Write(Preset preset, DetailReport report)
    {
        using var stream = new MemoryStream();
        using (var writer = new Utf8JsonWriter(stream))
        {
            writer.WriteStartObject();
            writer.WriteString("detail", preset.Detail);
            writer.WriteString("junction", preset.Junction.Id);
            writer.WriteString("wall", preset.Wall.Id);
            writer.WriteString("roof", preset.Roof.Id);
            writer.WriteBoolean("mirror", preset.Mirror);
            writer.WriteStartObject("parameters");
            foreach (var (key, value) in report.Parameters ?? [])
            {
                writer.WriteString(key, value.Text);
            }

            writer.WriteEndObject();
            writer.WriteStartObject("materials");
            foreach (var slot in preset.Slots.OrderBy(slot => slot.Slot.Key, StringComparer.Ordinal))
            {
                writer.WriteString(slot.Slot.Key, slot.Material.Id);
            }

            writer.WriteEndObject();
            writer.WriteEndObject();
        }

        return Encoding.UTF8.GetString(stream.GetBuffer(), 0, (int)stream.Length);
    }
}
