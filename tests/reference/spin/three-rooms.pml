/*
 * Three rooms with timed valves behind one pump, written by hand from the rules' sentences (not from the controller's
 * sources): the house "three" of the small houses, without its power cuts and clock faults. One tick is one scan. Calls are
 * free: any one may change before any scan. Times are the scaled ones that prove takes for that house.
 *
 *   spin -a three-rooms.pml && gcc -O2 -DSAFETY -DBFS -o pan pan.c && ./pan       (or -DNOPROOF, -DNODELAY to break it)
 */
#ifndef OPENING
#define OPENING 4
#define DELAY 4
#define OVERRUN 5
#define RUNDOWN 3
#define REST 5
#define LEAD 2
#endif

bool call0, call1, call2;
bool v0, v1, v2;           /* energised */
byte a0, a1, a2;           /* scans since, up to OPENING */
bool pump, heat, demand;
byte sinceDemand;          /* scans since demand came or went */
byte sinceStop = RUNDOWN;  /* scans since the pump stopped, up to RUNDOWN */
byte rest, start;          /* scans since the last stop and the last start, up to REST */
byte sinceHeat = LEAD;
byte proven, n, calls;
bool on, up;

#define P0 (v0 && a0 == OPENING)
#define P1 (v1 && a1 == OPENING)
#define P2 (v2 && a2 == OPENING)
#define COUNT(x, cap) if :: x < cap -> x++ :: else fi

inline age(v, a) { if :: v -> COUNT(a, OPENING) :: else -> a = 0 fi }

/* Wanted zones: those that call, and one companion in order when a single one calls. */
#define NEED (calls == 1)
#define W0 (call0 || (NEED))
#define W1 (call1 || (NEED && call0))
#define W2 (call2)

inline release(v, p, w) {
    if
    :: v && !w && demand && proven - p >= 2 -> v = 0; proven = proven - p
    :: v && !w && !demand && !pump && sinceStop == RUNDOWN -> v = 0; proven = proven - p
    :: v && !w && !demand && (pump || sinceStop < RUNDOWN) && sinceDemand == 0 && !p && proven >= 2 -> v = 0
    :: else
    fi
}

inline scan() {
    d_step {
        age(v0, a0); age(v1, a1); age(v2, a2);
        proven = P0 + P1 + P2;
        calls = call0 + call1 + call2;
        if
        :: (calls > 0) != demand -> demand = (calls > 0); sinceDemand = 0
        :: else -> if :: demand -> COUNT(sinceDemand, DELAY) :: else -> COUNT(sinceDemand, OVERRUN) fi
        fi;
        COUNT(start, REST);
        if
        :: pump ->
            if
#ifndef NOPROOF
            :: proven < 2 -> pump = 0; sinceStop = 0; rest = 0
#endif
            :: else ->
                if
                :: !demand && sinceDemand == OVERRUN && !heat && sinceHeat + 1 >= LEAD -> pump = 0; sinceStop = 0; rest = 0
                :: else
                fi
            fi
        :: else ->
            COUNT(sinceStop, RUNDOWN); COUNT(rest, REST);
            if
#ifdef NOPROOF
            :: demand && rest == REST && start == REST &&
#else
            :: demand && proven >= 2 && rest == REST && start == REST &&
#endif
#ifdef NODELAY
               true
#else
               sinceDemand == DELAY
#endif
               -> pump = 1; rest = 0; start = 0; sinceStop = 0; up = 1
            :: else
            fi
        fi;
        release(v0, P0, W0); release(v1, P1, W1); release(v2, P2, W2);
        if :: demand && W0 && !v0 -> v0 = 1; a0 = 0 :: else fi;
        if :: demand && W1 && !v1 -> v1 = 1; a1 = 0 :: else fi;
        if :: demand && W2 && !v2 -> v2 = 1; a2 = 0 :: else fi;
        if
        :: pump && demand -> heat = 1; sinceHeat = 0
        :: else -> if :: heat -> sinceHeat = 0 :: else -> COUNT(sinceHeat, LEAD) fi; heat = 0
        fi
    };
    d_step {
        n = P0 + P1 + P2;
        assert(!pump || n >= 2);                                  /* PUMP-PROOF */
        assert(!up || sinceDemand >= DELAY);                      /* PUMP-DELAY */
        assert(!heat || (pump && demand));                        /* HEAT-FLOW */
        up = 0
    }
}

init {
    do
    :: atomic {
        if
        :: skip
        :: call0 = !call0
        :: call1 = !call1
        :: call2 = !call2
        fi;
        scan()
    }
    od
}
