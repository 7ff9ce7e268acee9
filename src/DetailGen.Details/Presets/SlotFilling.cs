using DetailGen.Details.Parameters;
using DetailGen.Details.Reading;
using DetailGen.Details.Reading.Shapes;

namespace DetailGen.Details.Presets;

/// <summary>Puts a material into every slot: the author's where one is given, else the component's.</summary>
internal sealed class SlotFilling(MaterialLibrary materials, DetailKeys keys, List<Diagnostic> faults)
{
    public IReadOnlyList<FilledSlot> Fill(MapNode map)
    {
        var swapped = new Dictionary<string, (DesignMaterial Filling, Mark At)>(StringComparer.Ordinal);
        foreach (var entry in map.Entries("materials"))
        {
            if (keys.Slot(entry, faults) is { } slot && entry.Value is ScalarNode node && ShapeCheck.Holds(node, ComponentShape.Id) && Material(node, slot) is { } filling)
            {
                swapped[slot.Key] = (filling, node.At);
            }
        }

        // A slot may stand there several times, each under its own condition; the author's material goes into those that take its kind.
        return
        [
            .. keys.Own.SelectMany(component => component.Slots).Select(slot =>
                swapped.TryGetValue(slot.Key, out var own) && slot.Kinds.Contains(own.Filling.Material.Kind, StringComparer.Ordinal)
                    ? Usual(slot) is { } usual ? usual with { Filling = own.Filling, At = own.At, FromBase = keys.IsFromBase(own.At) } : null
                    : Followed(slot, swapped)).OfType<FilledSlot>(),
        ];
    }

    private FilledSlot? Followed(Slot slot, Dictionary<string, (DesignMaterial Filling, Mark At)> swapped) =>
        Usual(slot) is not { } usual ? null
        : slot.Follows is { } lead && swapped.TryGetValue(lead, out var led) && slot.Kinds.Contains(led.Filling.Material.Kind, StringComparer.Ordinal) ? usual with { Filling = led.Filling }
        : usual;

    private DesignMaterial? Material(ScalarNode node, Slot slot)
    {
        if (materials.Find(node.Text) is not { } material)
        {
            faults.Add(Messages.UnknownMaterial(node.At, slot.Key, node.Text, [.. materials.All.Where(other => Takes(slot, other)).Select(other => other.Id)]));
            return null;
        }

        if (!Takes(slot, material))
        {
            faults.Add(Messages.WrongMaterialKind(node.At, slot, material.Material));
            return null;
        }

        return material;
    }

    private bool Takes(Slot slot, DesignMaterial material) => keys.Own.SelectMany(component => component.Slots)
        .Any(other => other.Key == slot.Key && other.Kinds.Contains(material.Material.Kind, StringComparer.Ordinal));

    private FilledSlot? Usual(Slot slot)
    {
        if (materials.Find(slot.Default) is { } material)
        {
            return new(slot, material, null);
        }

        faults.Add(Messages.UnknownMaterial(slot.At, slot.Key, slot.Default, [.. materials.Ids]));
        return null;
    }
}
