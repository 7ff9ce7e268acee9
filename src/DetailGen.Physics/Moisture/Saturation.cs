namespace DetailGen.Physics.Moisture;

/// <summary>Saturation pressure of water vapour: 610.5·exp(17.269·θ/(237.3 + θ)) at and above 0 °C, over ice 610.5·exp(21.875·θ/(265.5 + θ)); Pa, °C.</summary>
/// <remarks>ISO 13788:2012, annex on saturation pressure (annex letter still to be read; formulas from the notes of the check cases, which give them from memory).</remarks>
public static class Saturation
{
    private const double AtZero = 610.5;

    /// <param name="temperature">°C, −100 to 100.</param>
    public static double Pressure(double temperature) => temperature >= 0
        ? AtZero * Math.Exp(17.269 * temperature / (237.3 + temperature))
        : AtZero * Math.Exp(21.875 * temperature / (265.5 + temperature));

    /// <summary>Temperature in °C at which a pressure saturates the air; null where there is none in the range of the formulas (−100 to 100 °C).</summary>
    /// <param name="pressure">Pa.</param>
    public static double? Temperature(double pressure)
    {
        if (!(pressure > 0))
        {
            return null;
        }

        var log = Math.Log(pressure / AtZero);
        var temperature = log >= 0 ? 237.3 * log / (17.269 - log) : 265.5 * log / (21.875 - log);
        return log < 17 && temperature is >= -100 and <= 100 ? temperature : null;
    }
}
