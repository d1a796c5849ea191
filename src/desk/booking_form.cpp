#include "desk/booking_form.hpp"

#include <algorithm>
#include <charconv>

#include "clinic/say.hpp"
#include "desk/booking_rows.hpp"
#include "desk/issue_words.hpp"
#include "desk/patient_card.hpp"
#include "desk/stock_list.hpp"
#include "desk/wording.hpp"

namespace sparewell::desk {
namespace {

constexpr const char* as_recorded = to_say("as recorded");

std::vector<std::string> items_for(const Day& day, const PatientRef& patient) {
  std::vector<std::string> made;
  for (const auto position : day.units_of(patient)) {
    const Unit& unit = day.clinic().units[position];
    if (unit.in_use_on(day.today())) made.push_back(unit.item.text);
  }
  std::ranges::sort(made);
  made.erase(std::ranges::unique(made).begin(), made.end());
  const auto theirs = static_cast<std::ptrdiff_t>(made.size());
  for (const Item& item : day.clinic().items) {
    if (std::find(made.begin(), made.begin() + theirs, item.code.text) == made.begin() + theirs) {
      made.push_back(item.code.text);
    }
  }
  std::sort(made.begin() + theirs, made.end());
  return made;
}

std::string news_of(const BookingOutcome& outcome) {
  const auto& booking = outcome.booking;
  return say("Booked for {}: {}.", booking.patient.text, booking_words(booking));
}

}  // namespace

BookingForm booking_form(const Day& day, const PatientRef& patient) {
  BookingForm form;
  form.intro = say("For {}. {}", patient_words(day, patient), care_caution());
  form.items = items_for(day, patient);
  form.sides = {as_recorded, to_say("left"), to_say("right")};
  const auto* record = day.index().patient(patient);
  if (record != nullptr && record->next_visit && *record->next_visit >= day.today()) {
    form.day = iso_text(*record->next_visit);
  }
  for (const auto& place : all_places(day.clinic())) {
    if (place.sort == PlaceSort::store) form.places.push_back(place.name);
  }
  const auto main = std::ranges::find(form.places, day.clinic().settings.main_place);
  if (main != form.places.end()) std::rotate(form.places.begin(), main, main + 1);
  return form;
}

Expected<BookingRequest> read_booking(const std::string& patient, const BookingAnswers& answers) {
  BookingRequest made;
  made.patient = patient;
  made.item = answers.item;
  made.side = parse_word<Side>(answers.side);
  const auto* end = answers.pieces.data() + answers.pieces.size();
  const auto [stopped, error] = std::from_chars(answers.pieces.data(), end, made.quantity);
  if (error != std::errc{} || stopped != end) return refuse(say("Pieces: write a whole number."));
  if (!answers.day.empty()) {
    made.on = parse_iso_date(answers.day);
    if (!made.on) return refuse(say("Write the day as 2026-11-25."));
  }
  made.place = answers.place;
  made.override_by = answers.by;
  made.override_because = answers.because;
  return made;
}

std::string booking_check_words(const ClinicFile& file, const std::string& patient,
                                const BookingAnswers& answers) {
  if (answers.item.empty()) return "";
  const auto request = read_booking(patient, answers);
  if (!request) return request.error().sentence;
  const auto check = check_booking(*open_store(file)->read(), *request, file.today);
  return check ? issue_text(*check) : check.error().sentence;
}

BookedForVisit book_for_visit(const ClinicFile& file, const std::string& patient,
                              const BookingAnswers& answers) {
  const auto request = read_booking(patient, answers);
  if (!request) return {request.error().sentence, "", ""};
  const auto outcome = book_pieces(*open_store(file), *request, file.today, file.who);
  if (!outcome) return {outcome.error().sentence, "", ""};
  const auto checks = issue_text(outcome->check);
  if (outcome->recorded) return {"", checks, news_of(*outcome)};
  return {said("A check stops it. A clinician may decide otherwise: fill in name and reason."),
          checks, ""};
}

Expected<StockForm> cancel_form(const Day& day, const PatientRef& patient) {
  std::vector<std::string> choices;
  std::vector<Reservation> bookings;
  for (const auto& serving : bookings_of(day.clinic(), patient.text, day.today())) {
    choices.push_back(booking_words(*serving.booking));
    bookings.push_back(*serving.booking);
  }
  if (bookings.empty()) {
    return refuse(say("Nothing is booked for {}.", patient.text));
  }
  StockForm form{said("Cancel a booking"),    {}, {},
                 said("&Remove the booking"), {}, to_say("a booking was cancelled")};
  form.intro = say("For {}.", patient_words(day, patient));
  form.fields = {
      {said_of("visit", "&Booking"), choices[0], said("The soonest first"), choices, true},
      {said("&Pieces"), said("all"), said("How many of them are not needed any more")}};
  form.book = [choices, bookings](store::UnitOfWork& work,
                                  const std::vector<std::string>& given) -> Expected<Booked> {
    const auto at = std::ranges::find(choices, given[0]) - choices.begin();
    const Reservation& chosen = bookings.at(static_cast<std::size_t>(at));
    BookingChoice choice{chosen.patient.text, chosen.item.text, chosen.needed_on,
                         !chosen.needed_on,   chosen.place,     0};
    if (given[1] != said("all")) {
      const auto* end = given[1].data() + given[1].size();
      const auto [stopped, error] = std::from_chars(given[1].data(), end, choice.quantity);
      if (error != std::errc{} || stopped != end || choice.quantity < 1) {
        return refuse(say("Pieces: write \"{}\" or a whole number from 1 on.", said("all")));
      }
    }
    const auto cancelled = cancel_booking(work, choice);
    if (!cancelled) return tl::unexpected{cancelled.error()};
    return Booked{{}, {cancelled_words(*cancelled)}, 0};
  };
  return form;
}

}  // namespace sparewell::desk
