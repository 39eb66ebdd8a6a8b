using System.Collections.Immutable;
using System.Globalization;
using System.Text.Json.Nodes;
using RackController.Model;
using RackController.RackFile.Binding;
using RackController.RackFile.Binding.Kinds;

namespace RackController.RackFile.Mappings;

/// <summary>A part on an I2C bus as written.</summary>
internal sealed record BusPartPart(Place Place, BusPart Part);

/// <summary>Reads a part on an I2C bus.</summary>
internal sealed class BusPartMapping : Mapping<BusPartPart>
{
    private static readonly Key<string> nameKey = Key.Required("name", Values.Name, "What sensors call it by; unique in the file.");

    private static readonly Key<BusPartKind> kindKey = Key.Required(
        "kind", new ChoiceKind<BusPartKind>(
            [("sht3x", BusPartKind.Sht3x), ("bme280", BusPartKind.Bme280), ("bh1750", BusPartKind.Bh1750),
            ("ads1115", BusPartKind.Ads1115), ("mcp23017", BusPartKind.Mcp23017), ("pcf8574", BusPartKind.Pcf8574)]),
        "What it is: `sht3x` or `bme280` for the air, `bh1750` for light, `ads1115` for voltages, `mcp23017` for relays, "
        + "`pcf8574` for relays that are active low.");

    private static readonly Key<int> busKey = Key.Defaulted(
        "bus", new WholeNumberKind("a bus", 0, 255), "1", "Number of the bus: 1 is `/dev/i2c-1`.");

    private static readonly Key<int> addressKey = Key.Optional(
        "address", new BusAddressKind(), "Its address, as `i2cdetect` prints it. Without it: the usual one of such a part.");

    /// <inheritdoc/>
    public override string Name => "part";

    /// <inheritdoc/>
    public override string Doc => "A part on an I2C bus, which one or several sensors are read from.";

    /// <inheritdoc/>
    public override ImmutableArray<Key> Keys => [nameKey, kindKey, busKey, addressKey];

    /// <inheritdoc/>
    protected override BusPartPart? Build(MappingReader keys)
    {
        var kind = keys.Get(kindKey);
        return new BusPartPart(keys.Place, new BusPart(
            keys.Get(nameKey), kind, keys.Get(busKey), keys.FindValue(addressKey) ?? kind.UsualAddress()));
    }
}

/// <summary>An address on an I2C bus, in hexadecimal digits after <c>0x</c>. Those beyond its bounds are reserved by the bus (UM10204,
/// from memory).</summary>
internal sealed class BusAddressKind : ScalarKind<int>
{
    private const int Least = 0x08;
    private const int Most = 0x77;

    /// <inheritdoc/>
    public override string Expected => "an address from 0x08 to 0x77, such as `0x48`";

    /// <inheritdoc/>
    public override JsonObject Describe(SchemaWriter schema) => new()
    {
        ["type"] = "string",
        ["pattern"] = "^0x[0-7][0-9a-fA-F]$",
        ["examples"] = new JsonArray("0x48"),
    };

    /// <inheritdoc/>
    protected override Misfit? Parse(string text, out int value)
    {
        value = 0;
        return !text.StartsWith("0x", StringComparison.Ordinal)
            || !int.TryParse(text.AsSpan(2), NumberStyles.AllowHexSpecifier, CultureInfo.InvariantCulture, out value)
                ? new Misfit("not an address", "write it as `i2cdetect` does, with `0x` before it")
            : value is < Least or > Most ? new Misfit("outside 0x08 to 0x77")
            : null;
    }
}
