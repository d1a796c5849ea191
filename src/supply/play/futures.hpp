/// Futures of the clinic, drawn by the law that was fitted.
#pragma once

#include "supply/play/past.hpp"
#include "wear/unit_life.hpp"

namespace sparewell::supply::play {

/// Days after today until `end` of which needs are drawn: units wear out by the fitted law under a
/// multiplier of their person that is drawn too, and are lost or recalled at the rates learned;
/// each is then asked for again and replaced at once. Returned, deceased and other endings end a
/// line. Left out: changes to another item, new patients, and that the law is not known exactly.
///
/// Our targets see on each order day the ages and what the person's history tells until then, not
/// the draws: the replacement of each unit comes at the chance of at_most_replaced, more than one
/// within the interval not being counted on. Refers to what it is made from.
class Futures {
 public:
  /// `lives` are those of the units in use at the end of `today`, `clinic` as known then.
  Futures(const Clinic& clinic, const std::vector<wear::LifeOfUnit>& lives, const Board& board);

  /// The same number gives the same future.
  [[nodiscard]] Scenario draw(std::uint64_t number, const std::vector<double>& services) const;

 private:
  /// A unit and those that follow it.
  struct Line {
    const wear::UnitLife* life = nullptr;
    wear::OtherEndings others;  ///< without changes to other items
    std::size_t item = 0;       ///< in Board::items
    std::size_t person = 0;
    std::uint64_t subject = 0;
  };
  /// One unit of a line: in use from `from` until `until`, in days after today.
  struct Spell {
    double from = 0;
    double until = 0;
    double age = 0;  ///< wear age at `from`
    bool worn = false;
    /// Of the spells of the line before: their cumulative hazard since today, and how many wore
    /// out.
    double hazard_before = 0;
    int worn_before = 0;
  };
  /// Everything of one kind of one patient.
  struct Person {
    const wear::UnitLife* life = nullptr;  ///< one of theirs, for what is known of them today
    std::vector<std::size_t> lines;
    std::uint64_t subject = 0;
  };
  using Spells = std::vector<std::vector<Spell>>;  ///< by line
  class Targeting;

  /// Wear age, and cumulative hazard since the spell began, so many days after today.
  [[nodiscard]] static double age_at(const Line& line, const Spell& spell, double at);
  [[nodiscard]] static double hazard_of(const Line& line, const Spell& spell, double at);
  [[nodiscard]] std::vector<Spell> spells_of(const Line& line, double multiplier,
                                             std::uint64_t number) const;
  [[nodiscard]] Requests requests_of(const Spells& spells) const;

  const Board& board_;
  Date today_;
  double horizon_ = 0;  ///< days after today
  std::vector<Line> lines_;
  std::vector<Person> persons_;
  std::vector<std::vector<std::size_t>> lines_of_item_;
};

}  // namespace sparewell::supply::play
