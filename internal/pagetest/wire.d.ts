// What goes between the page and the solver, written by TestWire of internal/solver/protocol.
declare namespace Wire {
  interface Focus {
    player: string;
    club: string;
    tee: string;
  }

  interface Walls {
    length: number;
    width: number;
    height: number;
  }

  interface Edit {
    path: string;
    value: number;
    remove?: boolean;
  }

  interface Request {
    kind: string;
    linked?: string;
    saved?: string;
    plan?: any;
    focus?: Focus;
    text?: string;
    units?: string;
    catch?: number;
    of?: string;
    x?: number;
    y?: number;
    length?: number;
    width?: number;
    drop?: number;
    walls?: Walls;
    edits?: Edit[];
  }

  interface Problem {
    message: string;
    field?: string;
  }

  interface Failure {
    error: Problem;
  }

  interface Slope {
    name: string;
    wall: string;
    kneeHeight: number;
    run: number;
  }

  interface Solid {
    name: string;
    min: [number, number, number];
    max: [number, number, number];
    cover?: string;
  }

  interface Room {
    length: number;
    width: number;
    height: number;
    slopes?: Slope[];
    solids?: Solid[];
  }

  interface Layer {
    name: string;
    thickness: number;
  }

  interface Mat {
    thickness: number;
    length?: number;
    width?: number;
    inset?: boolean;
  }

  interface Floor {
    layers?: Layer[];
    mat?: Mat;
  }

  interface Screen {
    x: number;
    centre: number;
    bottom: number;
    width: number;
    height: number;
    sideReturn?: number;
    topReturn?: number;
  }

  interface Tee {
    name: string;
    x: number;
    y: number;
  }

  interface Ball {
    speed?: number;
    launch: number;
    spin: number;
  }

  interface Club {
    name: string;
    kind: string;
    length?: number;
    lie?: number;
    loft?: number;
    ball?: Ball;
  }

  interface Player {
    name: string;
    height: number;
    hand?: string;
    sex?: string;
    span?: number;
    arm?: number;
    ballToToes?: number;
    ballToHands?: number;
    shoe?: number;
    turn?: string;
    plane?: string;
    follow?: string;
    skill?: string;
    clubs?: string[];
    tees?: string[];
  }

  interface Hung {
    name: string;
    min: [number, number, number];
    max: [number, number, number];
    throwRatio?: number;
    lensHeight?: number;
    lumens?: number;
  }

  interface Seat {
    name: string;
    x: number;
    y: number;
    radius?: number;
  }

  interface Sensor {
    name: string;
    min: [number, number];
    max: [number, number];
  }

  interface Air {
    temperature: number;
    altitude: number;
  }

  interface Plan {
    version: number;
    title?: string;
    units?: string;
    margin?: number;
    room: Room;
    floor: Floor;
    screen?: Screen;
    tees: Tee[];
    clubs: Club[];
    players: Player[];
    hung?: Hung[];
    seats?: Seat[];
    sensor?: Sensor;
    air?: Air;
    projector?: any;
    build?: any;
  }

  interface Field {
    path: string;
    label: string;
    kind: string;
    form?: string;
    unit?: string;
    hint?: string;
    optional?: boolean;
    choices?: [string, string][];
  }

  interface Member {
    path: string;
    title: string;
    from: string;
  }

  interface More {
    title: string;
    fields: Field[];
    members?: Member[];
  }

  interface List {
    path: string;
    title: string;
    one: string;
    bare?: boolean;
    duplicate?: boolean;
    fields: Field[];
    more?: More;
  }

  interface Part {
    path: string;
    title: string;
    fields: Field[];
  }

  interface Card {
    id: string;
    title: string;
    open?: boolean;
    fields?: Field[];
    lists?: List[];
    parts?: Part[];
  }

  interface StartAnswer {
    plan: Plan;
    notes?: string[];
    error?: Problem;
    cards: Card[];
  }

  interface PlanAnswer {
    plan: Plan;
    notes?: string[];
    error?: Problem;
  }

  interface Nearest {
    surface: string;
    part: string;
    phase: string;
    time: number;
    at: [number, number, number];
    on: [number, number, number];
    speed: number;
    variation: [number, number, number, number, number, number, number, number, number, number, number, number];
  }

  interface Contact {
    surface: string;
    part: string;
    phase: string;
    time: number;
    at: [number, number, number];
    on: [number, number, number];
    speed: number;
    variation: [number, number, number, number, number, number, number, number, number, number, number, number];
    afterImpact: number;
  }

  interface Cause {
    trait: string;
    cost: number;
  }

  interface Check {
    player: string;
    club: string;
    tee: string;
    verdict: string;
    clearance: number;
    typical: number;
    hitShare: number;
    hitError: number;
    tried: number;
    hits: number;
    nearest: Nearest;
    contact?: Contact;
    contactTypical?: Contact;
    bySurface: Record<string, number>;
    typicalBySurface: Record<string, number>;
    causes?: Cause[];
    headSpeed: number;
    heels: number;
    notes?: string[];
    remedies?: string[];
  }

  interface Report {
    version: number;
    verdict: string;
    checks: Check[];
    changes?: string[];
    modelError: number;
    modelErrorHow: string;
  }

  interface Sentences {
    headline: string;
    worst: string;
    verdict: string;
    bar: string;
    model: string;
    share: string;
    detail: string[];
  }

  interface Line {
    name: string;
    kind: string;
    points: [number, number][];
    closed: boolean;
    hidden: boolean;
  }

  interface Limb {
    part: string;
    a: [number, number];
    b: [number, number];
    r: number;
  }

  interface TapeLine {
    a: [number, number];
    b: [number, number];
    label: string;
    verdict: string;
    surface: string;
    fray: number;
  }

  interface Mark {
    name: string;
    at: [number, number];
  }

  interface View {
    axes: [string, string];
    size: [number, number];
    lines: Line[];
    sweep: [number, number][][];
    path: [number, number][];
    figure: Limb[];
    tape?: TapeLine;
    first?: Mark;
    marks: Mark[];
  }

  interface Set {
    plan: View;
    side: View;
    face: View;
  }

  interface SurfaceFigure {
    name: string;
    clearance: number;
    verdict: string;
    label: string;
    typical?: string;
  }

  interface CauseFigure {
    trait: string;
    cost: number;
    label: string;
  }

  interface Figures {
    fields: Record<string, string>;
    checks: string[];
    surfaces: SurfaceFigure[];
    causes: CauseFigure[];
    off: string[];
    mat: string[];
  }

  interface Fresh {
    "room.slopes": Slope;
    "room.solids": Solid;
    players: Player;
    clubs: Club;
    tees: Tee;
    "floor.layers": Layer;
    "floor.mat": Mat;
    screen: Screen;
    hung: Hung;
    seats: Seat;
    sensor: Sensor;
  }

  interface SolveAnswer {
    plan: Plan;
    report: Report;
    focus: Focus;
    sentences: Sentences;
    flat: Set;
    figures: Figures;
    fresh: Fresh;
    sparse: Plan;
    notes: string[];
  }

  interface LengthAnswer {
    metres: number;
    label: string;
  }

  interface VerdictText {
    verdict: string;
    text: string;
  }

  interface BallSaid {
    caught: VerdictText;
    returns: VerdictText;
    back: VerdictText;
  }

  interface BallFolds {
    first: string;
    screen: string;
    mishits: string;
    back: string;
    pads: string;
    assumed: string;
  }

  interface BallScreen {
    x: number;
    centre: number;
    bottom: number;
    width: number;
    height: number;
    sideReturn?: number;
    topReturn?: number;
    left: number;
    label: string;
    struck?: [number, number];
  }

  interface Leaving {
    speed: number;
    launch: number;
    spin: number;
  }

  interface BallContact {
    surface: string;
    kind: string;
    beside?: string;
    point: [number, number, number];
    time: number;
    speed: number;
    angle: number;
    caught: boolean;
    short?: number;
    material?: string;
  }

  interface Return {
    reaches: boolean;
    warn: boolean;
    speed: number;
    height: number;
    side: number;
    nearest: number;
    time: number;
  }

  interface Rebound {
    contact: BallContact;
    low: Return;
    likely: Return;
    high: Return;
  }

  interface Estimate {
    share: number;
    low: number;
    high: number;
  }

  interface Share {
    surface: string;
    kind: string;
    beside?: string;
    count: number;
    share: number;
    low: number;
    high: number;
    oneIn: number;
    short: number;
    farShort: number;
    fastest: number;
    from: [number, number, number];
    to: [number, number, number];
    back: Return;
    padded?: Return;
  }

  interface Heat {
    cols: number;
    rows: number;
    counts: number[];
  }

  interface MissOut {
    name: string;
    contact: BallContact;
    back: Return;
    padded?: Return;
  }

  interface Outcome {
    player: string;
    club: string;
    tee: string;
    launch: Leaving;
    struck: Rebound;
    balls: number;
    caught: Estimate;
    shares: Share[];
    heat: Heat;
    misses: MissOut[];
    mean?: [number, number];
    sd?: [number, number];
  }

  interface BallMishit {
    name: string;
    goes: string;
    back: string;
  }

  interface BallRow {
    player: string;
    club: string;
    tee: string;
    leaves: string;
    first: string;
    good: boolean;
    caught: string;
    else: string;
  }

  interface ReturnNeed {
    need: number;
    all: number;
    have: number;
    verdict: string;
    text: string;
  }

  interface CurvePoint {
    depth: number;
    side: number;
    top: number;
    label: string;
    sideLabel: string;
    topLabel: string;
  }

  interface MishitNeed {
    name: string;
    text: string;
    ok: boolean;
  }

  interface LaunchLine {
    player: string;
    club: string;
    tee: string;
    own: string;
    screen: string;
    spare: string;
    next: string;
    ok: boolean;
  }

  interface BallEnclosure {
    rate: number;
    balls: number;
    side: ReturnNeed;
    top: ReturnNeed;
    sentences: string[];
    curve: CurvePoint[];
    mishits: MishitNeed[];
    launch: LaunchLine[];
    behind: string;
    title: string;
    launchTitle: string;
  }

  interface BallRebound {
    off: string;
    met: boolean;
    low: string;
    likely: string;
    high: string;
  }

  interface Assumption {
    text: string;
    status: string;
  }

  interface BallPath {
    club: string;
    kind: string;
    label: string;
    points: [number, number][];
  }

  interface Trajectory {
    plan: BallPath[];
    side: BallPath[];
    face: BallPath[];
  }

  interface BallAnswer {
    focus: Focus;
    said: BallSaid;
    folds: BallFolds;
    summary: string;
    sentences: string[];
    screen?: BallScreen;
    outcome: Outcome;
    mishits: BallMishit[];
    table: BallRow[];
    enclosure?: BallEnclosure;
    rebound: BallRebound[];
    pads: string[];
    assumed: Assumption[];
    flat: Trajectory;
  }

  interface RoomsAnswer {
    rooms: Plan[];
  }

  interface Shape {
    name: string;
    label: string;
    rings: [number, number][][];
  }

  interface DragAnswer {
    x: number;
    y: number;
    verdict: string;
    sentence: string;
    labels: [string, string];
    off: string;
  }

  interface Place {
    name: string;
    x: number;
    y: number;
    verdict: string;
    lead: string;
    text: string;
    players?: string[];
  }

  interface StandAnswer {
    summary: string;
    sharing?: string;
    limits: string[];
    shapes: Shape[];
    reading: DragAnswer;
    best?: Place;
    players: Place[];
    hands: Place[];
    cell: [number, number];
  }

  interface RemedyText {
    kind: string;
    text: string;
    after: string;
    spare: boolean;
    clearance: number;
    verdict: string;
    edits: Edit[];
  }

  interface Thing {
    name: string;
    verdict: string;
    text: string;
    remedies: RemedyText[];
  }

  interface HangAnswerAt {
    x: number;
    y: number;
    lowest: number;
    text: string;
    labels: [string, string];
  }

  interface HangAnswer {
    summary: string;
    shapes: Shape[];
    things: Thing[];
    spot: HangAnswerAt;
  }

  interface SeatWords {
    name: string;
    verdict: string;
    text: string;
  }

  interface WatchAnswer {
    summary: string;
    note?: string;
    shapes: Shape[];
    seats: SeatWords[];
  }

  interface Foot {
    heel: [number, number];
    toe: [number, number];
  }

  interface TapeText {
    from: string;
    to: string;
    distance: number;
    a: [number, number];
    b: [number, number];
    label: string;
  }

  interface GuestMark {
    player: string;
    club: string;
    tee: string;
    hand: string;
    verdict: string;
    brief: string;
    sentence: string;
    beside?: string;
    more?: string;
    moved?: string;
    ball: [number, number];
    lead: Foot;
    trail: Foot;
    tapes: TapeText[];
    nearest: Mark;
    lines: Line[];
    figure: Limb[];
  }

  interface MarksAnswer {
    size: [number, number];
    marks: GuestMark[];
  }

  interface HangThingAnswer {
    x: number;
    y: number;
    thing: Hung;
    verdict: string;
    lowest: number;
    text: string;
    labels: [string, string];
  }

  interface RemediesAnswer {
    focus: Focus;
    remedies: RemedyText[];
  }

  interface Offer {
    sentence: string;
    edits: Edit[];
    headline: string;
    verdict: string;
  }

  interface Plays {
    player: string;
    clear: string[];
    tight: string[];
    text: string;
  }

  interface ChangesAnswer {
    offers: Offer[];
    plays: Plays[];
    compromise?: Offer;
    focus: Focus;
    check: Offer[];
  }

  interface ReelPhase {
    name: string;
    start: number;
    end: number;
  }

  interface ReelPart {
    name: string;
    r: number;
  }

  interface ReelMoment {
    start: number;
    end: number;
    time: number;
    verdict: string;
    surface: string;
    part: string;
  }

  interface ReelAnswer {
    focus: Focus;
    rate: number;
    duration: number;
    impact: number;
    tightest: number;
    first?: number;
    phases: ReelPhase[];
    parts: ReelPart[];
    motion: number[];
    ball: number[];
    said: number[];
    texts: string[];
    moments: ReelMoment[];
    face: boolean;
  }
}
