using RackController.Hardware.CharacterDevice;

namespace RackController.Hardware.Tests.CharacterDevice;

public sealed class GpioChipsTests
{
    [Fact]
    public void AMissingChipIsNamedTogetherWithThoseThatAreThere() => Assert.Equal(
        "No GPIO chip labelled 'relay-hat'. Chips here: 'pinctrl-a', 'pinctrl-b'. Correct the chip in the rack file, or connect "
        + "it.",
        GpioChips.WhyNot("relay-hat", matches: 0, ["pinctrl-a", "pinctrl-b"], []));

    [Fact]
    public void AMachineWithoutChipsSaysSo() => Assert.Contains(
        "this machine has no GPIO chip", GpioChips.WhyNot("relay-hat", matches: 0, [], []), StringComparison.Ordinal);

    [Fact]
    public void TwoChipsWithOneLabelAreNotGuessedAt() => Assert.Contains(
        "2 GPIO chips are labelled 'relay-hat'", GpioChips.WhyNot("relay-hat", matches: 2, [], []), StringComparison.Ordinal);

    [Fact]
    public void ARefusalIsPassedOn() => Assert.EndsWith(
        "Permission denied.", GpioChips.WhyNot("relay-hat", matches: 0, [], ["Permission denied."]), StringComparison.Ordinal);

    [Fact]
    public void ARefusalOfOneChipIsToldBesideTheOthers() => Assert.EndsWith(
        "Not opened: Permission denied.",
        GpioChips.WhyNot("relay-hat", matches: 0, ["pinctrl-a"], ["Permission denied."]), StringComparison.Ordinal);

    [Fact]
    public void AMissingNumberIsNamedTogetherWithThoseThatAreThere() => Assert.Equal(
        "No GPIO chip /dev/gpiochip7. Chips here: '/dev/gpiochip0'. Correct the chip in the rack file, or connect it.",
        GpioChips.WhyNot("/dev/gpiochip7", matches: 0, ["/dev/gpiochip0"], []));

    [Fact]
    public void ANumberThatNoMachineHasIsRefusedByTheDriver() => Assert.Contains(
        "No GPIO chip /dev/gpiochip999",
        Assert.Throws<GpioUnavailableException>(() => new CharacterDeviceDriver("/dev/gpiochip999", "test")).Message,
        StringComparison.Ordinal);

    [Fact]
    public void ALabelThatNoMachineHasIsRefusedByTheDriver()
    {
        var refusal = Assert.Throws<GpioUnavailableException>(() => new CharacterDeviceDriver("no chip is called this", "test"));

        Assert.Contains("'no chip is called this'", refusal.Message, StringComparison.Ordinal);
    }
}
