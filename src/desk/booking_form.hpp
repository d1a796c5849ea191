/// What the window asks when parts are booked for a visit, and when a booking is cancelled.
#pragma once

#include <string>
#include <vector>

#include "desk/clinic_jobs.hpp"
#include "desk/stock_form.hpp"
#include "desk/visit_booking.hpp"

namespace sparewell::desk {

/// What the form begins with.
struct BookingForm {
  std::string intro;
  std::vector<std::string> items;  ///< those that the patient has in use first, then all others
  std::vector<std::string> sides;  ///< the first one stands for "as recorded"
  std::string day;                 ///< of the next visit; "" when none is to come
  std::vector<std::string> places;
};

[[nodiscard]] BookingForm booking_form(const Day& day, const PatientRef& patient);

/// What is typed into the form.
struct BookingAnswers {
  std::string item;
  std::string side;
  std::string pieces;
  std::string day;
  std::string place;
  std::string by;
  std::string because;
};
/// Refuses numbers and days that cannot be read.
[[nodiscard]] Expected<BookingRequest> read_booking(const std::string& patient,
                                                    const BookingAnswers& answers);

/// The checks alone, in words, or why there are none: nothing is recorded.
[[nodiscard]] std::string booking_check_words(const ClinicFile& file, const std::string& patient,
                                              const BookingAnswers& answers);

/// Books what was typed. `refusal` is "" when it is booked, and `said` then tells what is.
struct BookedForVisit {
  std::string refusal;
  std::string checks;
  std::string said;
};
[[nodiscard]] BookedForVisit book_for_visit(const ClinicFile& file, const std::string& patient,
                                            const BookingAnswers& answers);

/// To cancel one of the patient's bookings. Refuses when there is none.
[[nodiscard]] Expected<StockForm> cancel_form(const Day& day, const PatientRef& patient);

}  // namespace sparewell::desk
