#include <algorithm>
#include <iostream>

#include <fmt/format.h>

#include "batch/check_json.hpp"
#include "batch/context.hpp"
#include "desk/booking_rows.hpp"
#include "desk/issue_words.hpp"
#include "desk/visit_booking.hpp"

namespace sparewell::batch {
namespace {

struct BookOptions {
  desk::BookingRequest request;
  std::string side;
  std::string on;
};

struct CancelOptions {
  desk::BookingChoice choice;
  std::string on;
  std::string reason;
};

Json json_of(const Reservation& booking) {
  return {{"patient_ref", booking.patient.text},
          {"item_code", booking.item.text},
          {"quantity", booking.quantity},
          {"needed_on", batch::json_of(booking.needed_on)},
          {"place", booking.place}};
}

Json json_of(const supply::Serving& serving, Date today) {
  Json row = json_of(*serving.booking);
  row["served"] = desk::serving_key(serving);
  row["in_stock"] = serving.here;
  row["elsewhere"] = serving.elsewhere;
  row["coming"] = serving.coming;
  row["late"] = serving.late;
  row["missing"] = serving.missing;
  row["expected_on"] = batch::json_of(serving.expected_on);
  row["words"] = desk::serving_words(serving, today);
  return row;
}

/// How the booking can be served; it stands in `clinic`.
const supply::Serving& serving_of(const std::vector<supply::Serving>& servings,
                                  const Reservation& booking) {
  return *std::ranges::find_if(
      servings, [&](const supply::Serving& each) { return *each.booking == booking; });
}

desk::BookingRequest request_of(const BookOptions& options) {
  auto request = options.request;
  if (!options.side.empty()) request.side = parse_word<Side>(options.side);
  if (!options.on.empty()) request.on = date_option("--on", options.on);
  return request;
}

int book(const Context& context, const BookOptions& options) {
  const auto outcome =
      desk::book_pieces(*context.open(store::OpenMode::existing), request_of(options),
                        context.today(), context.author("").who);
  if (!outcome) throw WrongUse{outcome.error().sentence};
  Json document = batch::json_of(outcome->check);
  document["recorded"] = outcome->recorded;
  std::string words = "Nothing was booked.";
  if (outcome->recorded) {
    const auto clinic = context.clinic_on(context.today());
    const auto servings = desk::bookings_of(clinic, outcome->booking.patient.text, context.today());
    const auto& serving = serving_of(servings, outcome->booking);
    document["booking"] = json_of(serving, context.today());
    words = fmt::format("Booked for {}: {}; {}.", outcome->booking.patient.text,
                        desk::booking_words(outcome->booking),
                        desk::serving_words(serving, context.today()));
  }
  if (context.json) {
    print(document);
  } else {
    std::cout << desk::issue_text(outcome->check) << '\n' << words << '\n';
  }
  return outcome->check.stops() ? done_with_findings : done;
}

int list(const Context& context, const std::string& patient) {
  const auto clinic = context.clinic_on(context.today());
  if (!patient.empty() && ClinicIndex{clinic}.patient({patient}) == nullptr) {
    throw WrongUse{fmt::format("There is no patient '{}'; check the reference.", patient)};
  }
  const auto servings = desk::bookings_of(clinic, patient, context.today());
  Json rows = Json::array();
  bool short_of = false;
  for (const auto& serving : servings) {
    short_of = short_of || serving.missing > 0 || serving.late > 0;
    rows.push_back(json_of(serving, context.today()));
    if (context.json) continue;
    std::cout << fmt::format("{}: {}; {}.\n", serving.booking->patient.text,
                             desk::booking_words(*serving.booking),
                             desk::serving_words(serving, context.today()));
  }
  if (context.json) {
    print({{"bookings", std::move(rows)}});
  } else if (servings.empty()) {
    std::cout << "Nothing is booked.\n";
  }
  return short_of ? done_with_findings : done;
}

int cancel(const Context& context, const CancelOptions& options) {
  auto choice = options.choice;
  if (!options.on.empty()) choice.on = date_option("--on", options.on);
  if (choice.on && choice.without_day) {
    throw WrongUse{"A booking has a day or none; leave out --on or --without-day."};
  }
  auto why = fmt::format("booking of {} for {} cancelled", choice.item, choice.patient);
  if (!options.reason.empty()) why += fmt::format(": {}", options.reason);
  const auto store = context.open(store::OpenMode::existing);
  const auto work = store->begin_write(context.author(why));
  const auto cancelled = desk::cancel_booking(*work, choice);
  if (!cancelled) throw WrongUse{cancelled.error().sentence};
  work->commit();
  if (context.json) {
    Json document = json_of(cancelled->booking);
    document["cancelled"] = cancelled->pieces;
    print(document);
  } else {
    std::cout << desk::cancelled_words(*cancelled) << '\n';
  }
  return done;
}

void add_book_options(Command& command, BookOptions& options) {
  auto& request = options.request;
  command.add_option("--patient", request.patient, "The patient's reference")->required();
  command.add_option("--item", request.item, "The item's code")->required();
  command.add_option("--quantity", request.quantity, "Pieces (default: 1)")->within(1, 10'000);
  command.add_option("--on", options.on,
                     "The day of the visit, YYYY-MM-DD (default: the patient's next visit)");
  command.add_option("--place", request.place,
                     "Where it will be handed over (default: the main place)");
  command.add_option("--side", options.side, "left or right (default: as recorded)")
      ->one_of({"left", "right"});
  command.add_option("--reason", request.reason, "Why, for the change log");
  command.add_option("--override", request.override_by,
                     "The clinician who decides although a finding stops it");
  command.add_option("--because", request.override_because, "The clinician's reason");
}

void add_cancel_options(Command& command, CancelOptions& options) {
  auto& choice = options.choice;
  command.add_option("--patient", choice.patient, "The patient's reference")->required();
  command.add_option("--item", choice.item, "The item's code")->required();
  command.add_option("--on", options.on, "The day that it is booked for, YYYY-MM-DD");
  command.add_flag("--without-day", choice.without_day, "The booking that has no day");
  command.add_option("--place", choice.place, "The place that it is booked at");
  command.add_option("--quantity", choice.quantity, "Pieces not needed any more (default: all)")
      ->within(1, 10'000);
  command.add_option("--reason", options.reason, "Why, for the change log");
}

}  // namespace

void add_book(Command& app, Context& context) {
  auto* books = app.add_subcommand("book", "Book pieces for a patient's visit, after the checks");
  const auto booked = std::make_shared<BookOptions>();
  add_book_options(*books, *booked);
  books->callback(
      [&context, booked] { context.run = [&context, booked] { return book(context, *booked); }; });
  auto* lists =
      app.add_subcommand("bookings", "What is booked for patients, and whether it can be served");
  const auto patient = std::make_shared<std::string>();
  lists->add_option("--patient", *patient, "The patient's reference (default: all)");
  lists->callback([&context, patient] {
    context.run = [&context, patient] { return list(context, *patient); };
  });
  auto* cancels = app.add_subcommand("unbook", "Cancel a booking, or some of its pieces");
  const auto cancelled = std::make_shared<CancelOptions>();
  add_cancel_options(*cancels, *cancelled);
  cancels->callback([&context, cancelled] {
    context.run = [&context, cancelled] { return cancel(context, *cancelled); };
  });
}

}  // namespace sparewell::batch
