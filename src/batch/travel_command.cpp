#include <iostream>

#include <fmt/format.h>

#include "batch/context.hpp"
#include "batch/json.hpp"
#include "batch/paper_options.hpp"
#include "batch/stock_command.hpp"
#include "desk/issue_words.hpp"
#include "desk/papers/travel_card.hpp"
#include "desk/travel_words.hpp"

namespace sparewell::batch {
namespace {

struct Options {
  desk::TravelRequest request;
  std::string from;
  std::string to;
  std::string activity;
  std::optional<double> kneeling;
  std::optional<double> wear;
  std::string sweating;
  bool sport = false;
  std::string card;
  PaperOptions paper;
};

desk::TravelRequest request_of(const Options& options) {
  auto request = options.request;
  request.departure = date_option("--from", options.from);
  request.back = date_option("--to", options.to);
  if (!options.activity.empty()) request.use.activity = parse_word<Activity>(options.activity);
  if (!options.sweating.empty()) request.use.sweating = parse_word<Sweating>(options.sweating);
  request.use.kneeling_hours = options.kneeling;
  request.use.wear_hours = options.wear;
  if (options.sport) request.use.impact_sport = true;
  return request;
}

Json json_of(const desk::TravelCheck& check, std::size_t number) {
  const auto& part = check.parts[number];
  Json taken = Json::array();
  for (const auto& level : part.take) taken.push_back(batch::json_of(level));
  Json stops = Json::array();
  for (const auto& finding : part.stops) stops.push_back(finding.words);
  return {{"side", word(part.side)},
          {"function", desk::function_words(part.function)},
          {"item_code", part.item.text},
          {"stops", std::move(stops)},
          {"in_use", part.need.carried + 1},
          {"failures_pmf", part.need.failures.mass()},
          {"assurance_without", care::assurance(part.need, 0)},
          {"spares", part.spares},
          {"assurance_with", care::assurance(part.need, part.spares)},
          {"all_with_one_less", desk::without_one(check, number)},
          {"from_shelf", std::move(taken)},
          {"to_order", part.to_order},
          {"order_by", batch::json_of(part.order_by)}};
}

Json json_of(const desk::TravelCheck& check, const std::string& card) {
  Json parts = Json::array();
  for (std::size_t i = 0; i < check.parts.size(); ++i) parts.push_back(json_of(check, i));
  Json unknown = Json::array();
  for (const auto& [side, function] : check.unknown) {
    unknown.push_back({{"side", word(side)}, {"function", desk::function_words(function)}});
  }
  return {{"patient_ref", check.request.patient},
          {"departure", batch::json_of(check.request.departure)},
          {"last_day", batch::json_of(check.last_day)},
          {"wanted", check.request.wanted},
          {"assurance_without", check.without_spares},
          {"assurance_with", check.with_spares},
          {"reached", check.reached},
          {"by_pieces", check.by_pieces},
          {"parts", std::move(parts)},
          {"unknown", std::move(unknown)},
          {"cautions", desk::travel_cautions()},
          {"card", card.empty() ? Json(nullptr) : Json(card)}};
}

void print_words(const desk::TravelCheck& check, Date today, const std::string& card) {
  std::cout << desk::travel_verdict(check) << '\n';
  for (const auto& gap : desk::travel_gaps(check)) std::cout << gap << '\n';
  for (std::size_t i = 0; i < check.parts.size(); ++i) {
    std::cout << desk::travel_part_words(check, i, today) << '\n';
  }
  for (const auto& caution : desk::travel_cautions()) std::cout << caution << '\n';
  if (!card.empty()) std::cout << fmt::format("The travel card was written to {}.\n", card);
}

int run(const Context& context, const Options& options) {
  const auto request = request_of(options);
  const auto assessment = context.forecast();
  const auto check = desk::check_travel(assessment, request);
  if (!check) throw WrongUse{check.error().sentence};
  if (!options.card.empty()) {
    const auto pages = desk::print_travel_card(assessment.clinic, *check, options.paper.how(),
                                               assessment.today, options.card);
    if (!pages) throw WrongUse{pages.error().sentence};
  }
  if (context.json) {
    print(json_of(*check, options.card));
  } else {
    print_words(*check, assessment.today, options.card);
  }
  const bool to_order = std::ranges::any_of(
      check->parts, [](const desk::TravelPart& part) { return part.to_order > 0; });
  return check->reached && !to_order ? done : done_with_findings;
}

}  // namespace

void add_travel(Command& app, Context& context) {
  auto* command =
      app.add_subcommand("travel", "Will the suspension last on a trip, and what to pack");
  const auto options = std::make_shared<Options>();
  command->add_option("--patient", options->request.patient, "The patient's reference")->required();
  command->add_option("--from", options->from, "The day of departure, YYYY-MM-DD")->required();
  command->add_option("--to", options->to, "The day of return, YYYY-MM-DD")->required();
  command->add_option("--delay", options->request.delay_days, "Days that the return may be later")
      ->within(0, 365);
  command
      ->add_option("--assurance", options->request.wanted,
                   "Wanted chance that everything lasts (default 0.95)")
      ->within(0.5, 0.9999);
  command->add_option("--activity", options->activity, "On the trip: K0 to K4")
      ->one_of({"K0", "K1", "K2", "K3", "K4"});
  command->add_option("--kneeling", options->kneeling, "Hours of kneeling a day on the trip")
      ->within(0.0, 24.0);
  command->add_option("--wear-hours", options->wear, "Hours of wear a day on the trip")
      ->within(0.0, 24.0);
  command->add_option("--sweating", options->sweating, "On the trip: low, normal or high")
      ->one_of({"low", "normal", "high"});
  command->add_flag("--impact-sport", options->sport, "Impact sport on the trip");
  command->add_flag("--fewest", options->request.by_pieces,
                    "The fewest pieces instead of the lowest cost");
  command->add_option("--card", options->card,
                      "Write the card to take along to this PDF file, a page for each language");
  add_languages(*command, options->paper);
  add_paper(*command, options->paper);
  command->callback([&context, options] {
    context.run = [&context, options] { return run(context, *options); };
  });
}

}  // namespace sparewell::batch
