package dev.stayfixed.telling.delivery;

/** Published in the transaction in which a delivery failed for good. */
public record DeliveryGivenUp(Delivery delivery, String why) {}
