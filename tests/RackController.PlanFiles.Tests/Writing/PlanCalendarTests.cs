using Ical.Net;
using RackController.Growing;

namespace RackController.PlanFiles.Tests;

public sealed class PlanCalendarTests
{
    // Read by a library that knows RFC 5545 and nothing of us.
    [Fact]
    public void AnotherProgramReadsEveryTaskOnItsDay()
    {
        var plan = Orders.Plan();
        var read = Calendar.Load(PlanCalendar.Of(plan, Orders.Forecast(plan)))!;
        var told = read.Events
            .SelectMany(one => one.Description!.Split('\n').Select(words => $"{one.Start!.Value:yyyy-MM-dd} {words}"))
            .Order(StringComparer.Ordinal);
        var asked = PlanTasks.With(plan, Orders.Forecast(plan))
            .Select(task => $"{task.Date:uuuu-MM-dd} {TaskWords.Sentence(task)}").Order(StringComparer.Ordinal);
        Assert.Equal(asked, told);
    }

    [Fact]
    public void EveryEventLastsItsDayAndHasANameOfItsOwn()
    {
        var events = Calendar.Load(PlanCalendar.Of(Orders.Plan(), Orders.Forecast(Orders.Plan())))!.Events;
        Assert.NotEmpty(events);
        Assert.All(events, one => Assert.True(one.IsAllDay));
        Assert.Equal(events.Count, events.Select(one => one.Uid).Distinct().Count());
    }

    [Theory]
    [InlineData("Bread, salt; and a back\\slash")]
    [InlineData("Käserei zur Straße 🌱 with a name that is long enough to be folded")]
    [InlineData("BEGIN:VEVENT")]
    public void ANameComesBackAsItWas(string customer)
    {
        var read = Calendar.Load(PlanCalendar.Of(Orders.Plan(customer), Orders.Forecast(Orders.Plan())))!;
        Assert.Contains(read.Events, one => one.Description!.EndsWith($"to {customer}", StringComparison.Ordinal));
    }

    // RFC 5545, 3.1: at most 75 octets without the line's end, and lines end with CR LF.
    [Fact]
    public void NoLineIsLongerThanTheStandardAllows()
    {
        var plan = Orders.Plan("Käserei zur langen Straße hinter der großen Brücke am Fluß");
        var text = PlanCalendar.Of(plan, Orders.Forecast(plan));
        Assert.DoesNotContain("\n", text.Replace("\r\n", "", StringComparison.Ordinal), StringComparison.Ordinal);
        Assert.All(text.Split("\r\n"), line => Assert.True(System.Text.Encoding.UTF8.GetByteCount(line) <= 75, line));
    }
}
