using DetailGen.Details.Constructions;
using DetailGen.Details.Parts;
using DetailGen.Sections;

namespace DetailGen.Details.Junctions;

/// <summary>Short sizes at the foot and head of an upstand.</summary>
internal static class UpstandMeasures
{
    /// <param name="face">Wall face that takes the flashing, mm.</param>
    public static IEnumerable<Measure> Close(Site site, PlacedRoof roof, Upstand upstand, double face)
    {
        var outer = upstand.Outer(site);
        var toe = outer + site.Length("upstand.fillet");
        var floor = roof.Plane.At(toe) + roof.Base;
        if (toe - outer >= 5)
        {
            yield return new("upstand.fillet", new(outer, floor), new(toe, floor), Axis.Horizontal, Chains.Close) { Told = new("upstand.fillet", "", "wide") };
        }

        yield return new("membrane.lap", new(toe, floor), new(toe + site.Length("membrane.lap"), floor), Axis.Horizontal, Chains.Close) { Told = new("upstand.membrane", "laps", "on to the field sheet") };
        var left = upstand.Wall + site.Length("roof.vcl");
        yield return new("upstand.insulation", new(left, 0), new(left + site.Length("upstand.insulation"), 0), Axis.Horizontal);
        if (!site.Sizes.HasLength("flashing.lap"))
        {
            yield break;
        }

        var front = roof.Plane.Datum + site.Length("flashing.clearance");
        var corner = upstand.Head(outer);
        yield return new("flashing.lap", new(front, corner - site.Length("flashing.lap")), new(front, corner), Axis.Vertical, Chains.Close) { Told = new("flashing", "laps the upstand", "") };
        var bed = site.Length("flashing.bed");
        yield return new("flashing.chase", new(face - site.Length("flashing.chase"), bed), new(face, bed), Axis.Horizontal, Chains.Close) { Told = new("flashing", "", "into the joint") };
    }
}
