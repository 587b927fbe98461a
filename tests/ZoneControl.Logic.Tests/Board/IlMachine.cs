namespace ZoneControl.Logic.Tests;

/// <summary>
/// Carries out the IL of the controller as compiled, one instruction after the other, and counts them: the board interprets,
/// so its scan costs by the instruction. It knows what the controller needs (ints, longs, arrays of ints, plain objects) and
/// refuses the rest by name.
/// </summary>
/// <remarks>
/// It keeps ints in longs and does not wrap their sums. That is right as long as no sum of ints leaves their range, and the
/// comparison with the desktop's outputs shows that none does.
/// </remarks>
internal sealed class IlMachine(IlProgram program)
{
    /// <summary>Instructions carried out, but those that do nothing.</summary>
    public long Executed { get; private set; }

    /// <summary>Instructions by the method in which they stand.</summary>
    public Dictionary<string, long> ByMethod { get; } = [];

    public IlValue Call(int token, params IlValue[] arguments) => Run(program.Method(token), arguments);

    /// <summary>A new object, built by its only constructor.</summary>
    public IlValue New(string type, params IlValue[] arguments)
    {
        int constructor = program.Find($"{type}..ctor");
        IlValue built = IlValue.To(program.NewBy(constructor));
        Run(program.Method(constructor), [built, .. arguments]);
        return built;
    }

    private IlValue Run(IlMethod method, IlValue[] arguments)
    {
        var stack = new Stack<IlValue>();
        var locals = new IlValue[method.Locals];
        int executed = 0;
        for (int at = 0; ;)
        {
            IlStep i = method.Code[at++];
            if (i.Name != "nop")
                executed++;
            switch (i.Name)
            {
                case "ret":
                    Count(method, executed);
                    return method.Returns ? stack.Pop() : default;
                case "call" or "callvirt" or "newobj":
                    Invoke(i, stack);
                    break;
                case "switch":
                    long which = stack.Pop().Number;
                    at = which >= 0 && which < i.Targets!.Length ? i.Targets[which] : at;
                    break;
                default:
                    if (i.Branches)
                        at = Branches(i.Name, stack) ? (int)i.Number : at;
                    else if (!Move(i, stack, arguments, locals) && !Reach(i, stack) && !Reckon(i.Name, stack))
                        throw new NotSupportedException($"{method.Name} uses {i.Name}");
                    break;
            }
        }
    }

    private void Count(IlMethod method, int executed)
    {
        Executed += executed;
        ByMethod[method.Name] = ByMethod.GetValueOrDefault(method.Name) + executed;
    }

    private void Invoke(IlStep i, Stack<IlValue> stack)
    {
        int token = i.Token;
        if (IlProgram.IsOutside(token))
        {
            if (i.Name != "call")
                throw new NotSupportedException("an object from outside is built: an exception");
            stack.Pop(); // an object's constructor does nothing
            return;
        }

        IlMethod called = program.Method(token);
        var arguments = new IlValue[called.Arguments];
        bool builds = i.Name == "newobj";
        for (int n = arguments.Length - 1; n >= (builds ? 1 : 0); n--)
            arguments[n] = stack.Pop();
        if (builds)
            arguments[0] = IlValue.To(program.NewBy(token));
        IlValue result = Run(called, arguments);
        if (builds)
            stack.Push(arguments[0]);
        else if (called.Returns)
            stack.Push(result);
    }

    private static bool Branches(string name, Stack<IlValue> stack)
    {
        if (name == "br")
            return true;
        IlValue right = stack.Pop();
        if (name is "brtrue" or "brfalse")
            return right.Number != 0 == (name == "brtrue");
        IlValue left = stack.Pop();
        return name switch
        {
            "beq" => left == right,
            "bne.un" => left != right,
            "blt" => left.Number < right.Number,
            "ble" => left.Number <= right.Number,
            "bgt" => left.Number > right.Number,
            "bge" => left.Number >= right.Number,
            "bgt.un" => (ulong)left.Number > (ulong)right.Number,
            "ble.un" => (ulong)left.Number <= (ulong)right.Number,
            "blt.un" => (ulong)left.Number < (ulong)right.Number,
            "bge.un" => (ulong)left.Number >= (ulong)right.Number,
            _ => throw new NotSupportedException(name),
        };
    }

    /// <summary>Constants, arguments and locals.</summary>
    private static bool Move(IlStep i, Stack<IlValue> stack, IlValue[] arguments, IlValue[] locals)
    {
        switch (i.Name)
        {
            case "nop": break;
            case "dup": stack.Push(stack.Peek()); break;
            case "pop": stack.Pop(); break;
            case "ldnull": stack.Push(default); break;
            case "ldstr": stack.Push(IlValue.To(i.Number)); break;
            case "ldarg": stack.Push(arguments[i.Number]); break;
            case "starg": arguments[i.Number] = stack.Pop(); break;
            case "ldloc": stack.Push(locals[i.Number]); break;
            case "stloc": locals[i.Number] = stack.Pop(); break;
            case "ldc": stack.Push(IlValue.Of(i.Number)); break;
            default: return false;
        }

        return true;
    }

    /// <summary>Fields and arrays.</summary>
    private bool Reach(IlStep i, Stack<IlValue> stack)
    {
        switch (i.Name)
        {
            case "ldfld":
                stack.Push(((IlObject)stack.Pop().Reference!).Fields[program.PlaceOf(i.Token)]);
                break;
            case "stfld":
                IlValue set = stack.Pop();
                ((IlObject)stack.Pop().Reference!).Fields[program.PlaceOf(i.Token)] = set;
                break;
            case "newarr":
                stack.Push(IlValue.To(new int[stack.Pop().Number]));
                break;
            case "ldlen":
                stack.Push(IlValue.Of(((int[])stack.Pop().Reference!).Length));
                break;
            case "ldelem.i4":
                long from = stack.Pop().Number;
                stack.Push(IlValue.Of(((int[])stack.Pop().Reference!)[from]));
                break;
            case "stelem.i4":
                int element = (int)stack.Pop().Number;
                long to = stack.Pop().Number;
                ((int[])stack.Pop().Reference!)[to] = element;
                break;
            case "ldelema":
                int at = (int)stack.Pop().Number;
                stack.Push(IlValue.To(new IlAddress((int[])stack.Pop().Reference!, at)));
                break;
            case "ldind.i4":
                var read = (IlAddress)stack.Pop().Reference!;
                stack.Push(IlValue.Of(read.Array[read.At]));
                break;
            case "stind.i4":
                int stored = (int)stack.Pop().Number;
                var write = (IlAddress)stack.Pop().Reference!;
                write.Array[write.At] = stored;
                break;
            default:
                return false;
        }

        return true;
    }

    private static bool Reckon(string name, Stack<IlValue> stack)
    {
        long right = stack.Pop().Number;
        long? single = name switch
        {
            "neg" => -right,
            "not" => ~right,
            "conv.i4" => (int)right,
            "conv.i8" => right,
            _ => null,
        };
        if (single is { } result)
        {
            stack.Push(IlValue.Of(result));
            return true;
        }

        long left = stack.Pop().Number;
        single = name switch
        {
            "add" => left + right,
            "sub" => left - right,
            "mul" => left * right,
            "div" => left / right,
            "rem" => left % right,
            "and" => left & right,
            "or" => left | right,
            "xor" => left ^ right,
            "shl" => (int)left << (int)right,
            "shr" => left >> (int)right,
            "ceq" => left == right ? 1 : 0,
            "cgt" => left > right ? 1 : 0,
            "cgt.un" => (ulong)left > (ulong)right ? 1 : 0,
            "clt" => left < right ? 1 : 0,
            _ => null,
        };
        if (single is not { } both)
            return false;
        stack.Push(IlValue.Of(both));
        return true;
    }
}
