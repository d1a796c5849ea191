#include <iostream>

#include <fmt/format.h>

#include "batch/context.hpp"
#include "batch/json.hpp"
#include "batch/paper_options.hpp"
#include "batch/stock_command.hpp"
#include "desk/issue_words.hpp"
#include "desk/papers/travel_card.hpp"
#include "desk/travel_lend.hpp"
#include "desk/travel_team.hpp"
#include "desk/travel_words.hpp"

namespace sparewell::batch {
namespace {

struct Options {
  desk::TravelRequest request;
  std::vector<std::string> patients;
  bool lend = false;
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
  request.patient = options.patients.front();
  request.departure = date_option("--from", options.from);
  request.back = date_option("--to", options.to);
  if (!options.activity.empty()) request.use.activity = parse_word<Activity>(options.activity);
  if (!options.sweating.empty()) request.use.sweating = parse_word<Sweating>(options.sweating);
  request.use.kneeling_hours = options.kneeling;
  request.use.wear_hours = options.wear;
  if (options.sport) request.use.impact_sport = true;
  return request;
}

Json json_of(const desk::TravelPart& part) {
  Json taken = Json::array();
  for (const auto& level : part.take) taken.push_back(batch::json_of(level));
  Json stops = Json::array();
  for (const auto& finding : part.stops) stops.push_back(finding.words);
  return {{"side", word(part.side)},
          {"function", word(part.function)},
          {"item_code", part.item.text},
          {"stops", std::move(stops)},
          {"in_use", part.in_use()},
          {"lent", part.lent_pieces()},
          {"failures_pmf", part.need.failures.mass()},
          {"assurance_without", care::assurance(part.need, 0)},
          {"spares", part.spares},
          {"assurance_with", care::assurance(part.need, part.spares)},
          {"from_shelf", std::move(taken)},
          {"to_order", part.to_order},
          {"order_by", batch::json_of(part.order_by)}};
}

Json json_of(const desk::TravelCheck& check) {
  Json parts = Json::array();
  for (std::size_t i = 0; i < check.parts.size(); ++i) {
    parts.push_back(json_of(check.parts[i]));
    parts.back()["all_with_one_less"] = desk::without_one(check, i);
  }
  Json unknown = Json::array();
  for (const auto& [side, function] : check.unknown) {
    unknown.push_back({{"side", word(side)}, {"function", word(function)}});
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
          {"resupply_days",
           check.request.resupply_days ? Json(*check.request.resupply_days) : Json(nullptr)},
          {"water", desk::water_cautions(check)},
          {"cautions", desk::travel_cautions(check.request)}};
}

Json json_of(const desk::TeamCheck& team) {
  Json members = Json::array();
  for (const auto& member : team.members) members.push_back(json_of(member));
  Json shared = Json::array();
  for (const auto& each : team.shared) {
    Json users = Json::array();
    for (const auto& user : each.users) {
      const auto& member = team.members[user.member];
      users.push_back(
          {{"patient_ref", member.request.patient}, {"side", word(member.parts[user.part].side)}});
    }
    Json part = json_of(each.part);
    for (const auto* key : {"side", "function", "in_use", "lent"}) part.erase(key);
    part["users"] = std::move(users);
    shared.push_back(std::move(part));
  }
  return {{"assurance_without", team.without_spares},
          {"assurance_with", team.with_spares},
          {"reached", team.reached},
          {"by_pieces", team.by_pieces},
          {"members", std::move(members)},
          {"shared", std::move(shared)}};
}

void print_words(const desk::TravelCheck& check, Date today) {
  std::cout << desk::travel_verdict(check) << '\n';
  for (const auto& gap : desk::travel_gaps(check)) std::cout << gap << '\n';
  for (std::size_t i = 0; i < check.parts.size(); ++i) {
    std::cout << desk::travel_part_words(check, i, today) << '\n';
  }
  for (const auto& caution : desk::water_cautions(check)) std::cout << caution << '\n';
  for (const auto& caution : desk::travel_cautions(check.request)) std::cout << caution << '\n';
}

void print_words(const desk::TeamCheck& team, Date today) {
  std::cout << desk::team_text(team, today);
  for (const auto& member : team.members) {
    for (const auto& caution : desk::water_cautions(member)) {
      std::cout << fmt::format("{}: {}\n", member.request.patient, caution);
    }
  }
  for (const auto& caution : desk::travel_cautions(team.members.front().request)) {
    std::cout << caution << '\n';
  }
}

bool complete(const desk::TravelCheck& check) {
  return check.reached && std::ranges::none_of(check.parts, [](const desk::TravelPart& part) {
           return part.to_order > 0;
         });
}

bool complete(const desk::TeamCheck& team) {
  const auto ordered = [](const desk::TravelPart& part) { return part.to_order > 0; };
  return team.reached &&
         std::ranges::none_of(team.members,
                              [&](const desk::TravelCheck& member) {
                                return std::ranges::any_of(member.parts, ordered);
                              }) &&
         std::ranges::none_of(team.shared, [&](const auto& each) { return ordered(each.part); });
}

/// Prints what the check says, after lending the spares where that is asked for.
template <class Check>
int tell(const Context& context, const Options& options, const Check& check, Date today) {
  desk::Booked lent;
  if (options.lend) {
    const auto store = context.open(store::OpenMode::existing);
    auto booked = desk::in_one_work(
        *store, context.author("spares were lent for a trip"),
        [&](store::UnitOfWork& work) { return desk::lend_spares(work, check, today); });
    if (!booked) throw WrongUse{booked.error().sentence};
    lent = std::move(*booked);
  }
  if (context.json) {
    Json document = json_of(check);
    if (options.lend) document["lent"] = lent.notes;
    document["card"] = options.card.empty() ? Json(nullptr) : Json(options.card);
    print(document);
  } else {
    print_words(check, today);
    for (const auto& note : lent.notes) std::cout << fmt::format("Lent: {}\n", note);
    if (!options.card.empty()) {
      std::cout << fmt::format("The travel card was written to {}.\n", options.card);
    }
  }
  return complete(check) ? done : done_with_findings;
}

int run(const Context& context, const Options& options) {
  const auto request = request_of(options);
  const auto assessment = context.forecast();
  if (options.patients.size() > 1) {
    if (!options.card.empty()) {
      throw WrongUse{"A card is of one patient; write it for each of them alone."};
    }
    const auto team = desk::check_team(assessment, request, options.patients);
    if (!team) throw WrongUse{team.error().sentence};
    return tell(context, options, *team, assessment.today);
  }
  const auto check = desk::check_travel(assessment, request);
  if (!check) throw WrongUse{check.error().sentence};
  if (!options.card.empty()) {
    const auto pages = desk::print_travel_card(assessment.clinic, *check, options.paper.how(),
                                               assessment.today, options.card);
    if (!pages) throw WrongUse{pages.error().sentence};
  }
  return tell(context, options, *check, assessment.today);
}

}  // namespace

void add_travel(Command& app, Context& context) {
  auto* command =
      app.add_subcommand("travel", "Will the suspension last on a trip, and what to pack");
  const auto options = std::make_shared<Options>();
  command
      ->add_option("--patient", options->patients,
                   "The patient's reference; several who travel together, with one each")
      ->required()
      ->repeatable();
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
  command->add_flag("--water", options->request.use.water,
                    "Swimming or showering with the prosthesis: at least as high sweating");
  command
      ->add_option("--resupply-days", options->request.resupply_days,
                   "Days after which a failed part can be had at the place")
      ->within(1, 365);
  command->add_flag("--lend", options->lend,
                    "Lend the spares that lie on the shelf until the last day");
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
