using RackController.Model;

namespace RackController.Notices.Tests;

/// <summary>A way of telling whose other end is the test.</summary>
internal sealed class FakeWay(string name = "mail to grower@home.example", AlarmPriority atLeast = AlarmPriority.Low) : IWay
{
    public string Name => name;

    public AlarmPriority AtLeast => atLeast;

    public bool IsForPrograms { get; init; }

    /// <summary>What came so far, with every repeat.</summary>
    public List<Letter> Came { get; } = [];

    /// <summary>What becomes of the next; null for what never ends by itself.</summary>
    public SendResult? Answer { get; set; } = SendResult.Sent;

    public IEnumerable<string> Subjects => Came.Select(letter => letter.Subject);

    public async Task<SendResult> SendAsync(Letter letter, CancellationToken cancellation)
    {
        Came.Add(letter);
        if (Answer is null)
        {
            await Task.Delay(Timeout.Infinite, cancellation);
        }

        return Answer!;
    }
}
