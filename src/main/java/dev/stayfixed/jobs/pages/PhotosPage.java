package dev.stayfixed.jobs.pages;

import dev.stayfixed.jobs.Photos;
import dev.stayfixed.platform.Given;
import dev.stayfixed.platform.Texts;
import dev.stayfixed.web.pages.Form;
import dev.stayfixed.web.pages.Show;
import dev.stayfixed.web.pages.TechnicianPage;
import io.swagger.v3.oas.annotations.Hidden;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.ui.Model;
import org.springframework.util.MultiValueMap;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.multipart.MultipartFile;

/** Photos of a repair: added and taken away on the job's page. */
@Hidden
@TechnicianPage
@RequestMapping("/jobs/{id}")
class PhotosPage {

    private final Photos photos;
    private final JobView view;
    private final Texts texts;

    PhotosPage(Photos photos, JobView view, Texts texts) {
        this.photos = photos;
        this.view = view;
        this.texts = texts;
    }

    @PostMapping("/repairs/{repairId}/photos")
    String add(
            @PathVariable UUID id,
            @PathVariable UUID repairId,
            @RequestParam MultiValueMap<String, String> typed,
            @RequestParam(required = false) @Nullable MultipartFile file,
            @ModelAttribute("show") Show show,
            Model model,
            HttpServletResponse response)
            throws IOException {
        Form form = new Form(typed);
        String place = "file-" + repairId;
        if (file == null || file.isEmpty()) {
            form.wrong(place, texts.of("jobs.photo.wanted"));
        } else if (file.getSize() > Photos.LARGEST_FILE) {
            form.wrong(place, texts.of("jobs.photo.too-large"));
        }
        byte[] bytes = form.isWrong() || file == null ? new byte[0] : file.getBytes();
        return form.answer(
                response,
                () -> {
                    photos.add(
                            id,
                            repairId,
                            Given.optional(form.value("about")),
                            Given.optional(form.value("caption")),
                            bytes);
                    return "redirect:/jobs/" + id + "?said=photo-added#repairs-heading";
                },
                refused -> form.wrong(
                        place,
                        texts.of(
                                "jobs.photo.refused",
                                refused.mistakes().stream()
                                        .map(mistake -> String.valueOf(mistake.found()))
                                        .findFirst()
                                        .orElseGet(() -> String.valueOf(refused.getMessage())))),
                () -> view.page(id, form, show, model));
    }

    @GetMapping("/photos/{photo}.jpg")
    ResponseEntity<byte[]> see(@PathVariable UUID id, @PathVariable UUID photo) {
        return ResponseEntity.ok().contentType(MediaType.IMAGE_JPEG).body(photos.jpeg(id, photo));
    }

    @PostMapping("/photos/{photo}/remove")
    String remove(@PathVariable UUID id, @PathVariable UUID photo) {
        photos.remove(id, photo);
        return "redirect:/jobs/" + id + "?said=photo-removed#repairs-heading";
    }
}
