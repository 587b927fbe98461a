namespace ZoneControl.Cli;

/// <summary>Something the person gave cannot be used. The message is meant for that person; the program ends with exit code 2.</summary>
public sealed class BadInputException : Exception
{
    /// <summary>With lines to show, one mistake each.</summary>
    public BadInputException(string message) : base(message)
    {
    }

    /// <summary>Without a message of its own.</summary>
    public BadInputException() : base("The input cannot be used.")
    {
    }

    /// <summary>With the failure behind it.</summary>
    public BadInputException(string message, Exception inner) : base(message, inner)
    {
    }
}
