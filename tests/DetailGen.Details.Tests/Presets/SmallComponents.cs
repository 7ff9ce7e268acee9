using DetailGen.Details.Climates;
using DetailGen.Details.Parameters;
using DetailGen.Details.Presets;
using DetailGen.Details.Reading;

namespace DetailGen.Details.Tests.Presets;

/// <summary>A wall, a roof and two junctions with a handful of keys, so that readings depend on no real detail.</summary>
internal static class SmallComponents
{
    private const string Source = "source: { document: from memory, confidence: memory }";

    public const string Wall = $$"""
        id: plain-wall
        kind: wall
        title: Cavity wall
        parameters:
          - { key: wall.cavity, unit: length, from: 50 mm, to: 300 mm, step: 5 mm, stock: cavity-width, default: 100 mm, meaning: Width of the cavity., {{Source}} }
          - { key: wall.fill, unit: choice, options: [full, partial], meaning: How far it is filled., {{Source}} }
        derived:
          - { key: wall.thickness, as: wall.cavity + 205 mm }
          - key: wall.rest
            cases:
              - { when: wall.fill = partial, as: wall.cavity - 50 mm }
              - { as: 0 mm }
        claims:
          - { id: fits, require: wall.cavity >= 50 mm, reason: A narrower cavity bridges. }
        materials:
          - { slot: wall.outer-leaf, default: brick-outer, kinds: [masonry], name: Outer leaf }
        layers:
          - { slot: wall.outer-leaf, as: leaf, name: Outer leaf, course: 75 mm, roles: [structure, air-barrier], fixings: { name: Wall ties, slot: tie, over: [wall.cavity, 450 mm], diameter: 4 mm } }
        words:
          - { part: wall.*, note: "{wall.cavity} {material}" }
        """;

    public const string Roof = $$"""
        id: plain-roof
        kind: roof
        title: Warm roof
        parameters:
          - { key: roof.fall, unit: ratio, from: 1:20, to: 1:120, default: 1:40, meaning: Fall of the roof., {{Source}} }
          - { key: roof.insulation-layers, unit: count, from: 1, to: 2, default: 2, meaning: Layers., {{Source}} }
        """;

    public static string Junction(string id, string key) => $$"""
        id: {{id}}
        kind: junction
        title: {{id}}
        parameters:
          - { key: {{key}}, unit: length, from: 30 mm, to: 100 mm, step: 5 mm, meaning: How far it stands out., {{Source}} }
        """;

    public static PresetContext Context { get; } = new(
        Components.Of(Component(Wall), Component(Roof), Component(Junction("parapet", "coping.overhang")), Component(Junction("abutment", "flashing.lap"))),
        MaterialLibrary.Load(), ClimateLibrary.Load(), ["uk", "own"], ["upstand-min", "tray-step"]);

    public static Component Component(string text) => ComponentReader.Read(NodeReader.Text(text, "component.yaml", ReadingLimits.Usual)).Value;
}
