/**
 * Gets messages to their receivers: at least once, in order within a stream, tried again for three days. What is to be sent is a row,
 * written in the transaction of its cause; db-scheduler only wakes the work up. Open {@link dev.stayfixed.telling.delivery.Outbox}
 * first, then {@code DeliveryTask}. May depend on {@code platform} and db-scheduler; knows no channel.
 */
@org.jspecify.annotations.NullMarked
package dev.stayfixed.telling.delivery;
