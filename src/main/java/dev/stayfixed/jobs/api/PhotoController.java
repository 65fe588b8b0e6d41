package dev.stayfixed.jobs.api;

import dev.stayfixed.jobs.Photo;
import dev.stayfixed.jobs.Photos;
import dev.stayfixed.platform.Given;
import dev.stayfixed.platform.problem.Mistake;
import dev.stayfixed.platform.problem.Refused;
import dev.stayfixed.web.api.Link;
import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.responses.ApiResponse;
import io.swagger.v3.oas.annotations.tags.Tag;
import java.io.IOException;
import java.net.URI;
import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.DeleteMapping;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RequestPart;
import org.springframework.web.bind.annotation.ResponseStatus;
import org.springframework.web.bind.annotation.RestController;
import org.springframework.web.multipart.MultipartFile;

@Tag(name = "Photos", description = "Pictures that belong to a repair; they stand in its report")
@RestController
@RequestMapping(Link.BASE + "/jobs/{jobId}")
class PhotoController {

    private final Photos photos;

    PhotoController(Photos photos) {
        this.photos = photos;
    }

    /**
     * A photo of a repair.
     *
     * @param about the measurement that it shows; missing for the repair as a whole
     * @param width in pixels, as kept
     * @param height in pixels, as kept
     * @param digest SHA-256 of the JPEG that is kept
     * @param href of the JPEG
     */
    record PhotoAnswer(
            UUID id,
            UUID repairId,
            @Nullable String about,
            @Nullable String caption,
            Instant addedAt,
            int width,
            int height,
            String digest,
            String href) {

        static PhotoAnswer of(UUID jobId, Photo photo) {
            return new PhotoAnswer(
                    photo.id(),
                    photo.repairId(),
                    photo.about().orElse(null),
                    photo.caption().orElse(null),
                    photo.addedAt(),
                    photo.width(),
                    photo.height(),
                    photo.digest(),
                    Link.to("jobs", jobId, "photos", photo.id() + ".jpg").href());
        }
    }

    /** The photos of a job. */
    record PhotosAnswer(List<PhotoAnswer> items) {}

    @Operation(
            summary = "Add a photo to a repair",
            description =
                    "Send it as the part \"file\", as JPEG or PNG of at most 12 MB. It is drawn anew, upright and at most 1600 pixels"
                            + " long: nothing is kept of what a camera writes beside the picture. The same photo again changes nothing.")
    @ApiResponse(responseCode = "201", description = "Created; Location names it", useReturnTypeSchema = true)
    @PostMapping(path = "/repairs/{repairId}/photos", consumes = MediaType.MULTIPART_FORM_DATA_VALUE)
    ResponseEntity<PhotoAnswer> add(
            @PathVariable UUID jobId,
            @PathVariable UUID repairId,
            @RequestPart("file") MultipartFile file,
            @RequestParam(required = false) @Nullable String about,
            @RequestParam(required = false) @Nullable String caption)
            throws IOException {
        if (file.getSize() > Photos.LARGEST_FILE) {
            throw Refused.content(
                    new Mistake("file", file.getSize() + " bytes", "at most " + Photos.LARGEST_FILE + " bytes"));
        }
        PhotoAnswer answer = PhotoAnswer.of(
                jobId, photos.add(jobId, repairId, Given.optional(about), Given.optional(caption), file.getBytes()));
        return ResponseEntity.created(URI.create(answer.href())).body(answer);
    }

    @Operation(summary = "The photos of a job, the oldest first")
    @GetMapping("/photos")
    PhotosAnswer list(@PathVariable UUID jobId) {
        return new PhotosAnswer(photos.ofJob(jobId).stream()
                .map(photo -> PhotoAnswer.of(jobId, photo))
                .toList());
    }

    @Operation(summary = "One photo")
    @GetMapping(path = "/photos/{photoId}.jpg", produces = MediaType.IMAGE_JPEG_VALUE)
    byte[] picture(@PathVariable UUID jobId, @PathVariable UUID photoId) {
        return photos.jpeg(jobId, photoId);
    }

    @Operation(summary = "Take a photo away")
    @DeleteMapping("/photos/{photoId}")
    @ResponseStatus(HttpStatus.NO_CONTENT)
    void remove(@PathVariable UUID jobId, @PathVariable UUID photoId) {
        photos.remove(jobId, photoId);
    }
}
