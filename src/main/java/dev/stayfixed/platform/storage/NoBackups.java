package dev.stayfixed.platform.storage;

import dev.stayfixed.platform.problem.ProblemType;
import dev.stayfixed.platform.problem.Refused;

/** A database of which this service makes no copies. */
record NoBackups(String why) implements Backups {

    static NoBackups inMemory() {
        return new NoBackups("found a database in memory, expected an H2 file; what it holds is gone with the service");
    }

    /** @param command that does it */
    static NoBackups ofServer(String command) {
        return new NoBackups("found a PostgreSQL, which makes consistent copies while the service runs: " + command);
    }

    @Override
    public Backup take(By by) {
        throw new Refused(ProblemType.NO_BACKUP, why);
    }
}
