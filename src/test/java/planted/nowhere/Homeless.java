package planted.nowhere;

/** A class in no room. */
class Homeless {}
