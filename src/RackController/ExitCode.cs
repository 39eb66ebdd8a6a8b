namespace RackController;

/// <summary>What the process tells its caller. The same four everywhere, so that scripts can rely on them.</summary>
internal static class ExitCode
{
    /// <summary>It went as expected.</summary>
    public const int AsExpected = 0;

    /// <summary>The answer is no: a file is not right, a bench did not pass.</summary>
    public const int AnswerIsNo = 1;

    /// <summary>The command line asks for something that there is not.</summary>
    public const int WrongUse = 2;

    /// <summary>It could not be tried: a file is missing, a folder cannot be written.</summary>
    public const int CouldNotRun = 3;
}
