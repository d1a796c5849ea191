#include "desk/restock.hpp"

#include <iterator>

#include <fmt/format.h>

namespace sparewell::desk {

RestockPlan plan_restock(const Assessment& assessment, const std::vector<StockMovement>& ledger,
                         int days_between) {
  RestockPlan plan;
  supply::RestockQuestion question;
  plan.days_between = question.days_between = days_between;
  question.transit = supply::TransitDays{ledger};
  const Branches branches{assessment.clinic};
  for (const auto& name : branches.names()) {
    plan.ways.push_back({name, question.transit.to(name), question.transit.seen(name)});
  }
  if (!branches.several()) return plan;
  const auto lives = without_held(assessment.lives, assessment.held_needs);
  const supply::PlaceDemand demand{assessment.clinic, lives, assessment.today};
  plan.moves = supply::restock(assessment.clinic, demand, question);
  return plan;
}

std::vector<StockMovement> ledger_for_restock(const store::Snapshot& snapshot,
                                              const Clinic& clinic) {
  if (!Branches{clinic}.several()) return {};
  return snapshot.movements();
}

Expected<Booked> book_restock(store::UnitOfWork& work,
                              const std::vector<supply::RestockMove>& moves, Date today) {
  Booked made;
  for (const auto& move : moves) {
    for (const auto& level : move.lots) {
      const supply::Pieces pieces{level.lot.item, level.lot.lot, level.lot.use_by, level.place,
                                  level.quantity};
      auto booked = book_transfer(work, pieces, move.to.place, supply::Travel::sent, today,
                                  fmt::format("restock of {}", move.to.place));
      if (!booked) return booked;
      std::ranges::move(booked->movements, std::back_inserter(made.movements));
    }
  }
  return made;
}

}  // namespace sparewell::desk
