package dev.stayfixed.web.api;

import io.swagger.v3.oas.models.OpenAPI;
import io.swagger.v3.oas.models.Operation;
import io.swagger.v3.oas.models.PathItem.HttpMethod;
import io.swagger.v3.oas.models.info.Info;
import io.swagger.v3.oas.models.media.ArraySchema;
import io.swagger.v3.oas.models.media.Content;
import io.swagger.v3.oas.models.media.IntegerSchema;
import io.swagger.v3.oas.models.media.MediaType;
import io.swagger.v3.oas.models.media.ObjectSchema;
import io.swagger.v3.oas.models.media.StringSchema;
import io.swagger.v3.oas.models.parameters.Parameter;
import io.swagger.v3.oas.models.responses.ApiResponse;
import io.swagger.v3.oas.models.responses.ApiResponses;
import org.springdoc.core.customizers.OpenApiCustomizer;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;

/** What holds for every operation and is written in the description once: problems, and repeated submissions. */
@Configuration(proxyBeanMethods = false)
class ApiDescription {

    @Bean
    OpenApiCustomizer wholeDescription() {
        return api -> {
            api.info(
                    new Info()
                            .title("Stayfixed")
                            .version("v1")
                            .description(
                                    "Did the repair stay fixed, and can it be proven? Errors are RFC 9457 problems; each type is"
                                            + " documented at its own address. Changes need If-Match with the ETag of the version to change."));
            operations(api);
        };
    }

    private static void operations(OpenAPI api) {
        api.getPaths()
                .values()
                .forEach(path -> path.readOperationsMap().forEach((method, operation) -> {
                    if (method == HttpMethod.POST) {
                        operation.addParametersItem(idempotencyKey());
                    }
                    addProblem(operation);
                }));
    }

    private static Parameter idempotencyKey() {
        return new Parameter()
                .in("header")
                .name("Idempotency-Key")
                .description(
                        "A name for this request, 1 to 255 printable characters: the same request with the same key takes"
                                + " effect once and is answered alike")
                .schema(new StringSchema().maxLength(255));
    }

    private static void addProblem(Operation operation) {
        ApiResponses responses = operation.getResponses();
        responses.addApiResponse(
                "default",
                new ApiResponse()
                        .description("A problem; its type says which")
                        .content(new Content()
                                .addMediaType("application/problem+json", new MediaType().schema(problem()))));
    }

    private static ObjectSchema problem() {
        ObjectSchema schema = new ObjectSchema();
        schema.addProperty("type", new StringSchema().description("address of the type's documentation"));
        schema.addProperty("title", new StringSchema());
        schema.addProperty("status", new IntegerSchema());
        schema.addProperty(
                "detail", new StringSchema().description("what was found, where, what was expected, what to do"));
        schema.addProperty("instance", new StringSchema());
        ArraySchema errors = new ArraySchema();
        errors.setDescription("places in the body: pointer, found, expected, message");
        errors.setItems(new ObjectSchema());
        schema.addProperty("errors", errors);
        return schema;
    }
}
