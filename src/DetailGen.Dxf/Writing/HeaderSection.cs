using System.Security.Cryptography;
using System.Text;
using DetailGen.Dxf.Document;
using DetailGen.Dxf.Tables;
using DetailGen.Dxf.Tags;

namespace DetailGen.Dxf.Writing;

/// <summary>The header variables: version, units, extents, dates and ids. No user, machine, path or clock.</summary>
internal static class HeaderSection
{
    private const double NoDate = 2451545; // noon of 1 January 2000 by the day number, where the title block has no date
    private const double DayNumberOfOleDate = 2415019;
    private const int LimitStep = 10; // mm

    /// <summary>Answers where the version's id goes when the content is known.</summary>
    public static int Write(TagWriter writer, WritePlan plan, int seed)
    {
        var document = plan.Document;
        var extents = plan.Extents;
        var date = document.Identity.Date is { } day ? day.ToDateTime(TimeOnly.MinValue).ToOADate() + DayNumberOfOleDate : NoDate;

        writer.Text(0, "SECTION");
        writer.Text(2, "HEADER");
        Named("$ACADVER").Text(1, "AC1024");
        Named("$ACADMAINTVER").Integer(70, 6);
        Named("$DWGCODEPAGE").Text(3, "ANSI_1252"); // what files of this level carry, although the bytes are UTF-8
        Named("$INSBASE").Point(10, default);
        Named("$EXTMIN").Point(10, new(extents.Left, extents.Bottom));
        Named("$EXTMAX").Point(10, new(extents.Right, extents.Top));
        Named("$LIMMIN").FlatPoint(10, new(RoundedOut(extents.Left, Math.Floor), RoundedOut(extents.Bottom, Math.Floor)));
        Named("$LIMMAX").FlatPoint(10, new(RoundedOut(extents.Right, Math.Ceiling), RoundedOut(extents.Top, Math.Ceiling)));
        Named("$LTSCALE").Number(40, document.PlotScale);
        Named("$TEXTSTYLE").Text(7, TextStyle.Name);
        Named("$CLAYER").Text(8, "0");
        Named("$CELTYPE").Text(6, "ByLayer");
        Named("$CECOLOR").Integer(62, 256);
        Named("$CELTSCALE").Number(40, 1);
        Named("$DIMSTYLE").Text(2, DimensionStyle.Standard);
        Named("$LUNITS").Integer(70, 2);
        Named("$LUPREC").Integer(70, 1);
        Named("$AUNITS").Integer(70, 0);
        Named("$AUPREC").Integer(70, 1);
        Named("$TDCREATE").Number(40, date);
        Named("$TDUPDATE").Number(40, date);
        Named("$HANDSEED").Handle(5, seed);
        Named("$TILEMODE").Integer(70, 1);
        Named("$PLINEGEN").Integer(70, 1);
        Named("$PSLTSCALE").Integer(70, 0);
        Named("$MEASUREMENT").Integer(70, 1);
        Named("$CELWEIGHT").Integer(370, -1);
        Named("$LWDISPLAY").Integer(290, 1);
        Named("$INSUNITS").Integer(70, 4);
        Named("$PSTYLEMODE").Integer(290, 1);
        Named("$FINGERPRINTGUID").Text(2, IdFrom(document.Identity));
        var version = Named("$VERSIONGUID").Reserve(2, IdFrom([]).Length);
        Named("$EXTNAMES").Integer(290, 1);
        Named("$CMLSTYLE").Text(2, "Standard");
        writer.Text(0, "ENDSEC");
        return version;

        TagWriter Named(string name)
        {
            writer.Text(9, name);
            return writer;
        }
    }

    /// <summary>An id from the first 16 bytes of SHA-256, marked as made from content (version 8, RFC 9562).</summary>
    public static string IdFrom(ReadOnlySpan<byte> content)
    {
        Span<byte> hash = stackalloc byte[SHA256.HashSizeInBytes];
        SHA256.HashData(content, hash);
        hash[6] = (byte)((hash[6] & 0x0F) | 0x80);
        hash[8] = (byte)((hash[8] & 0x3F) | 0x80);
        return new Guid(hash[..16], bigEndian: true).ToString("B").ToUpperInvariant();
    }

    private static string IdFrom(Identity identity) => IdFrom(Encoding.UTF8.GetBytes($"{identity.Project}\n{identity.Number}"));

    private static double RoundedOut(double value, Func<double, double> way) => way(value / LimitStep) * LimitStep;
}
