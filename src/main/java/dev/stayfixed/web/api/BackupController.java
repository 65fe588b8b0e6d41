package dev.stayfixed.web.api;

import dev.stayfixed.platform.storage.Backups;
import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.tags.Tag;
import org.springframework.http.HttpStatus;
import org.springframework.http.MediaType;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.ResponseStatus;
import org.springframework.web.bind.annotation.RestController;

@Tag(name = "Backups", description = "Copies of everything, made while the service runs")
@RestController
@RequestMapping(Link.BASE + "/backups")
class BackupController {

    private final Backups backups;

    BackupController(Backups backups) {
        this.backups = backups;
    }

    /** Nothing to say; that it is JSON keeps pages of other sites from asking for backups. */
    record BackupRequest() {}

    @Operation(
            summary =
                    "Copy the H2 file into the backup folder; everything that was answered before is in it. A PostgreSQL is refused with"
                            + " the command that copies it")
    @PostMapping(consumes = MediaType.APPLICATION_JSON_VALUE)
    @ResponseStatus(HttpStatus.CREATED)
    Backups.Backup take(@RequestBody BackupRequest request) {
        return backups.take(Backups.By.REQUEST);
    }
}
