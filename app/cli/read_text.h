#pragma once

#include <ostream>
#include <string>
#include <vector>

#include "app/cli/truth.h"
#include "app/flow/examine.h"

// What a person reads on the terminal.
namespace cli {

// "71 %"; "under 1 %" and "over 99 %" at the ends: nothing is ever quite sure.
std::string percent(double probability);

// A line of text in Leiden signs with, in plain words, how much of it is unsure, faint or lost.
std::string lineInWords(const models::Line& line);

// "1940-03 (83 %), 1940 (8 %)", likeliest first.
std::string datesInWords(const std::vector<models::DateMeaning>& dates);

// The candidates, best first, each with its years and reasons; those below half a per cent
// together.
void printCandidates(std::ostream& out, const models::CandidateList& candidates,
                     const std::string& indent);

// Which unread letter would settle most, and what it would mean; nothing where none would.
void printSettling(std::ostream& out, const models::CandidateList& candidates,
                   const std::string& indent);

// One photo: its stamps with their lines (places without a letter read are counted), and what they
// can mean together.
void printExamination(std::ostream& out, const std::string& photo,
                      const flow::Examination& examination);

// What is true of the photo just printed.
void printTruth(std::ostream& out, const Truth& truth, const models::MakerRegister& known);

}  // namespace cli
