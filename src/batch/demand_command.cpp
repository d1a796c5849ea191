#include <iostream>

#include <fmt/format.h>

#include "batch/context.hpp"
#include "batch/json.hpp"
#include "desk/wording.hpp"
#include "supply/place_demand.hpp"

namespace sparewell::batch {
namespace {

/// Demand at one place, or of the whole clinic when none is named.
supply::Pmf demand_of(const desk::Assessment& assessment, const ItemCode& item,
                      const std::string& place, int day_count) {
  const Date today = assessment.today;
  if (place.empty()) {
    return supply::demand(assessment.clinic, assessment.lives, item, today, day_count);
  }
  const supply::PlaceDemand demand{assessment.clinic, assessment.lives, today};
  const auto at = demand.branches().position(place);
  if (!at) {
    throw WrongUse{fmt::format("The clinic has no store '{}'; it has {}.", place,
                               desk::list_words(demand.branches().names()))};
  }
  return demand.of(*ClinicIndex{assessment.clinic}.item(item), *at).until(today + days{day_count});
}

int run(const Context& context, const std::string& item_code, const std::string& place,
        int day_count) {
  const auto assessment = context.forecast();
  const ItemCode item{item_code};
  if (ClinicIndex{assessment.clinic}.item(item) == nullptr) {
    throw WrongUse{fmt::format("The catalogue has no item '{}'; check the code.", item_code)};
  }
  const auto pmf = demand_of(assessment, item, place, day_count);
  if (context.json) {
    Json document{{"item_code", item_code}, {"days", day_count}};
    if (!place.empty()) document["place"] = place;
    document["mean"] = pmf.mean();
    document["pmf"] = pmf.mass();
    print(document);
    return done;
  }
  std::cout << fmt::format("{}{}: {:.2f} expected in {} days\n", item_code,
                           place.empty() ? std::string{} : fmt::format(" at {}", place), pmf.mean(),
                           day_count);
  for (std::size_t n = 0; n < pmf.mass().size(); ++n) {
    if (pmf.mass()[n] < 1e-6) continue;
    std::cout << fmt::format("{:>4} needed: {:8.4f} %\n", n, 100 * pmf.mass()[n]);
  }
  return done;
}

}  // namespace

void add_demand(Command& app, Context& context) {
  auto* command =
      app.add_subcommand("demand", "How many pieces of an item will be needed, with chances");
  const auto item = std::make_shared<std::string>();
  const auto day_count = std::make_shared<int>();
  command->add_option("--item", *item, "The item's code")->required();
  command->add_option("--days", *day_count, "Days after today")->required()->within(0, 3660);
  const auto place = std::make_shared<std::string>();
  command->add_option("--place", *place, "Only of the patients who belong to this store");
  command->callback([&context, item, place, day_count] {
    context.run = [&context, item, place, day_count] {
      return run(context, *item, *place, *day_count);
    };
  });
}

}  // namespace sparewell::batch
