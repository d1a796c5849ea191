#include "desk/sensitivity_work.hpp"

#include <doctest/doctest.h>

#include "desk/issuing.hpp"
#include "desk/patient_findings.hpp"
#include "desk/reexamined_words.hpp"
#include "desk/wear_decision.hpp"
#include "store/open.hpp"

namespace sensitivity_work_test {

using namespace sparewell;
using namespace sparewell::desk;

namespace {

const Date today = make_date(2026, 11, 25);
const PatientRef ana{"P-1"};

/// Ana reacts to mineral oil and wears a sleeve; a cushion liner belongs below it.
std::unique_ptr<store::Store> made_store() {
  auto store = store::open_in_memory([] { return std::chrono::system_clock::time_point{}; });
  const auto work = store->begin_write({"anna", "example"});
  Item sleeve;
  sleeve.code = {"S1"};
  sleeve.description = "Suspension sleeve";
  sleeve.kind = Kind::sleeve;
  sleeve.material = Material::silicone;
  sleeve.constituents = {"silicone elastomer"};
  work->put(sleeve);
  work->put(Patient{ana, "Ana", "Fieldmouse", std::nullopt, std::nullopt});
  Prosthesis prosthesis;
  prosthesis.patient = ana;
  prosthesis.suspension = Suspension::sleeve;
  prosthesis.delivered_on = today - days{100};
  work->put(prosthesis);
  work->put(Sensitivity{ana, "mineral oil", "blisters", "patch test", today - days{200}});
  Unit unit;
  unit.patient = ana;
  unit.item = {"S1"};
  unit.lot = "A";
  unit.issued_on = today - days{50};
  work->put(unit);
  work->record({{{"S1"}, "A", std::nullopt}, "main store", MovementKind::receipt, 3, today, ""});
  work->commit();
  return store;
}

template <class Work>
auto in_work(store::Store& store, Work work) {
  const auto open = store.begin_write({"anna", "example"});
  auto made = work(*open);
  if (made) open->commit();
  return made;
}

Expected<Reexamined> set(store::Store& store, const std::vector<std::string>& constituents) {
  return in_work(store, [&](store::UnitOfWork& work) {
    return set_constituents(work, {"S1"}, constituents, today);
  });
}

Expected<SensitivityDecision> decided(store::Store& store, const DecisionRequest& request) {
  return in_work(store,
                 [&](store::UnitOfWork& work) { return decide(work, request, today); });
}

IssueRequest issue() {
  IssueRequest request;
  request.patient = "P-1";
  request.item = "S1";
  return request;
}

}  // namespace

TEST_CASE("a changed constituent is kept, logged, and names who is newly in conflict") {
  const auto store = made_store();
  const auto changed = set(*store, {"silicone elastomer", "white mineral oil"});
  REQUIRE(changed);
  REQUIRE(changed->newly.size() == 1);
  CHECK(changed->patients == 1);
  CHECK(changed->newly[0].now.patient == ana);
  CHECK(changed->newly[0].before == Verdict::none_known);
  const auto clinic = store::load_clinic(*store->read());
  CHECK(clinic.items[0].constituents.size() == 2);
  CHECK(store->read()->changes(1)[0].action == "changed");
  const auto lines = reexamined_lines(*changed, ClinicIndex{clinic});
  REQUIRE(lines.size() == 4);
  CHECK(lines[2].find("P-1, left, S1 (worn): Conflict with the recorded sensitivity to mineral oil") == 0);
  CHECK(lines[2].find("white mineral oil, which is a kind of mineral oil") != std::string::npos);
  CHECK(set(*store, {"silicone elastomer", "white mineral oil"}).error().sentence ==
        "S1 declares just that already.");
  CHECK_FALSE(set(*store, {"silicone elastomer", ""}));
  // Nothing declared says nothing of the patient's safety, and is nobody's new conflict.
  const auto emptied = set(*store, {});
  REQUIRE(emptied);
  CHECK(emptied->newly.empty());
}

TEST_CASE("a sensitivity that is noted examines its patient, and is refused where it cannot be") {
  const auto store = made_store();
  const auto note = [&](const Sensitivity& noted) {
    return in_work(*store, [&](store::UnitOfWork& work) {
      return note_sensitivity(work, noted, today);
    });
  };
  const auto made = note({ana, "silicone", "itching", "observed", today});
  REQUIRE(made);
  REQUIRE(made->newly.size() == 1);
  CHECK_FALSE(made->newly[0].before);
  CHECK_FALSE(note({ana, "silicone", "", "observed", today}));
  CHECK_FALSE(note({{"P-9"}, "nickel", "", "observed", today}));
  CHECK_FALSE(note({ana, "", "", "observed", today}));
  CHECK_FALSE(note({ana, "nickel", "", "guessed", today}));
  CHECK_FALSE(note({ana, "nickel", "", "observed", today + days{1}}));
}

TEST_CASE("what the clinic knows of a substance counts until it is withdrawn") {
  const auto store = made_store();
  REQUIRE(set(*store, {"moss oil"}));
  const SubstanceRow row{"moss oil", SubstanceRelation::is_a, "mineral oil", "maker's letter", {}};
  const auto add = [&] {
    return in_work(*store,
                   [&](store::UnitOfWork& work) { return add_relation(work, row, today); });
  };
  const auto withdraw = [&] {
    return in_work(*store,
                   [&](store::UnitOfWork& work) { return withdraw_relation(work, row, today); });
  };
  const auto added = add();
  REQUIRE(added);
  CHECK(added->newly.size() == 1);
  CHECK_FALSE(add());
  CHECK(withdraw());
  CHECK_FALSE(withdraw());
  const auto again = add();
  REQUIRE(again);
  CHECK(again->newly.size() == 1);
  CHECK(store->read()->all<SubstanceRow>().size() == 1);
  const SubstanceRow known{"white oil", SubstanceRelation::is_a, "mineral oil", "anyone", {}};
  CHECK_FALSE(in_work(
      *store, [&](store::UnitOfWork& work) { return add_relation(work, known, today); }));
}

TEST_CASE("a clinician's decision is kept with its reason, and lets the part be handed over") {
  const auto store = made_store();
  CHECK(decided(*store, {"P-1", "S1", "", "B. Fern", "tried"}).error().sentence ==
        "No recorded sensitivity of P-1 speaks against S1; there is nothing to decide.");
  REQUIRE(set(*store, {"white mineral oil"}));
  CHECK(issue_part(*store, issue(), today, today, "anna")->recorded == false);
  CHECK_FALSE(decided(*store, {"P-1", "S1", "", "B. Fern", " "}));
  CHECK_FALSE(decided(*store, {"P-9", "S1", "", "B. Fern", "tried"}));
  const auto made = decided(*store, {"P-1", "S1", "", "B. Fern", "four weeks of trial, skin clear."});
  REQUIRE(made);
  CHECK(made->verdict == Verdict::conflict);
  CHECK(decision_words(*made) ==
        "B. Fern decided on 25 Nov 2026 that P-1 may wear S1 although mineral oil is recorded "
        "(conflict): four weeks of trial, skin clear.");
  const auto issued = issue_part(*store, issue(), today, today, "anna");
  REQUIRE(issued);
  CHECK(issued->recorded);
  CHECK_FALSE(issued->check.stops());
  // Said again: the part is still asked about, with the decision in the words.
  CHECK(words_of(issued->check, care::Gravity::ask).find("B. Fern decided that it may be worn") !=
        std::string::npos);
  const auto gone = in_work(*store, [&](store::UnitOfWork& work) {
    return withdraw(work, {"P-1", "S1", "", "", ""}, today);
  });
  REQUIRE(gone);
  CHECK(gone->size() == 1);
  CHECK(issue_part(*store, issue(), today, today, "anna")->recorded == false);
  CHECK(store->read()->all<SensitivityDecision>().size() == 1);
}

TEST_CASE("a patient's findings come gravest first and name what is missing") {
  const auto store = made_store();
  REQUIRE(set(*store, {"white mineral oil"}));
  const auto clinic = store::load_clinic(*store->read());
  const auto findings = findings_of(clinic, ana, today);
  REQUIRE(findings.size() == 2);
  CHECK(findings[0].topic == FindingTopic::sensitivity);
  CHECK(findings[0].finding.gravity == care::Gravity::stops);
  CHECK(findings[0].substance == "mineral oil");
  CHECK(findings[1].missing == care::Function::cushion_liner);
  CHECK(findings[1].finding.words.find("Sleeve suspension needs a cushion liner") == 0);
  CHECK(findings_of_everyone(clinic, today).size() == 2);
}

TEST_CASE("a patient of whom no sensitivity is recorded is told so, and not as safe") {
  const auto store = made_store();
  const auto clinic = store::load_clinic(*store->read());
  const auto findings = findings_of(clinic, {"P-2"}, today);
  REQUIRE(findings.size() == 1);
  CHECK(findings[0].finding.key == "nothing_recorded");
  CHECK(findings[0].finding.gravity == care::Gravity::ask);
}

}  // namespace sensitivity_work_test
