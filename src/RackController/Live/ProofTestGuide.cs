using RackController.Control;
using RackController.Service;

namespace RackController.Live;

/// <summary>Turns keys into the requests of a proof test: which one, begin, what was seen, abandon.</summary>
internal sealed class ProofTestGuide(string name)
{
    /// <summary>Whether the person is with it.</summary>
    public bool IsOpen { get; private set; }

    /// <summary>Which test is chosen, from 0.</summary>
    public int Chosen { get; private set; }

    /// <summary>Takes a key that is for it.</summary>
    /// <param name="key">The key, in upper case.</param>
    /// <param name="status">What the person saw when pressing it.</param>
    /// <param name="ask">Asks, and says what was asked.</param>
    /// <returns>Whether the key was for it.</returns>
    public bool Take(char key, SiteStatus status, Action<OperatorRequest, string> ask)
    {
        if (key == 'P')
        {
            IsOpen = !IsOpen;
            return true;
        }

        return IsOpen && (status.ProofTest is { } test ? TakeInTest(key, test, ask) : TakeInList(key, status, ask));
    }

    // Stop above all, what a test may need, and what it leaves to be reset; nothing that would surprise.
    private static bool IsForBoth(char key) => key is 'S' or 'R' or 'F' or 'H' or 'E' or 'A' or 'X' or '\t';

    private bool TakeInList(char key, SiteStatus status, Action<OperatorRequest, string> ask)
    {
        var tests = status.ProofTests;
        switch (key)
        {
            case 'J' or 'K':
                Chosen = (Chosen + (key == 'J' ? 1 : tests.Length - 1)) % tests.Length;
                return true;
            case '\r' or '\n':
                ask(new BeginProofTest(name, tests[Chosen].Item), $"begin the proof test of {tests[Chosen].Item}");
                return true;
            default:
                return !IsForBoth(key);
        }
    }

    private bool TakeInTest(char key, ProofTestProgress test, Action<OperatorRequest, string> ask)
    {
        switch (key)
        {
            case 'Y' or 'N' when test is { AsksPerson: true, WaitsForRack: false }:
                ask(new AnswerProofTest(name, key == 'Y'), key == 'Y' ? "it is so" : "it is not so");
                return true;
            case 'Q':
                ask(new AbandonProofTest(name), $"abandon the proof test of {test.Item}");
                return true;
            default:
                return !IsForBoth(key);
        }
    }
}
