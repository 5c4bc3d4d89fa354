#pragma once

#include <QObject>
#include <QString>
#include <QUndoStack>
#include <memory>
#include <optional>
#include <set>
#include <string>
#include <vector>

#include "app/gui/photo_work.h"

namespace gui {

// The work on one photo: its stamps, the letters in hand, what the person says of the item, and
// every change undoable. Holds no widget and starts no examination; it says when one is wanted.
class WorkSession : public QObject {
    Q_OBJECT

public:
    WorkSession(vision::Photo photo, std::string person, QObject* parent = nullptr);

    const vision::Photo& photo() const { return photo_; }
    const std::string& person() const { return person_; }
    const std::vector<StampWork>& stamps() const { return stamps_; }
    int current() const { return current_; }  // -1 when there are no stamps
    const StampWork* stamp() const;           // the current one, or nullptr
    const ReadingEditor& editor() const { return editor_; }
    QUndoStack* undoStack() { return &undo_; }
    // One reading a stamp, as they stand now, for ranking.
    std::vector<models::Reading> readings() const;
    // The stamps that belong into a record (see isWorthFiling).
    std::vector<StampWork> stampsToFile() const;
    bool isTouched() const;

    void setCurrent(int stamp);
    void moveTo(CellPlace place);
    void move(Move move);
    void type(const QString& text);  // each user-perceived character in turn
    void apply(Edit edit);
    // Puts lines written as text in place; one undo for all that is written in one go, which a
    // number of the caller's tells.
    void write(const std::vector<models::Line>& typed, int gesture);
    // Writes the letters that a mark has where they are lost here, as restored.
    void restoreFrom(const std::string& mark);
    // Where an earlier sitting left off; nothing is counted as gone through by it.
    void returnTo(int stamp, CellPlace place);

    // Stamps start from located or recorded outlines; forgets what could be undone.
    void setStamps(std::vector<StampWork> stamps);
    // Undoable; the stamp's examination is wanted again. Changes of one gesture (a number of the
    // caller's, not negative) that follow each other are undone together.
    void setOutline(int stamp, const vision::Quad& corners, int gesture = -1);
    void addOutline(const vision::Quad& corners);
    void deleteOutline(int stamp);
    // Takes out the stamps in which the person confirmed nothing, but not those with these ids;
    // undoable. Says so where there is none, or none that is confirmed.
    void deleteOtherOutlines(const std::set<std::string>& kept);
    // Confirms what is left of every stamp that belongs into the record. Where a stamp was not
    // gone to yet or an unsure letter was not looked at, leads there and says so instead.
    //   returns  whether nothing is open any more
    bool confirmRest();
    // Takes the current stamp for a mirror image, or no longer; undoable.
    void turnMirrored();
    // Turns the current stamp by so many quarters clockwise, and keeps that way up; undoable.
    void turn(int quarters);
    // Says that a stamp is another view of the one with this id (empty: one of its own); undoable.
    void setViewOf(int stamp, const std::string& id);
    // The same, said where this session is not in hand; not undone here.
    void takeViewOf(const std::string& stamp_id, const std::string& id);
    void takeStampExamination(const std::string& stamp_id,
                              std::shared_ptr<const flow::StampExamination> examined);

    // Candidates came into view, or went: recorded with what is read from then on.
    void setCandidatesInView(bool in_view, bool opened_by_key);

    const FilingFields& fields() const { return fields_; }
    void setFields(const FilingFields& fields);   // undoable
    void takeFields(const FilingFields& fields);  // as they are said elsewhere, or were kept
    // What the item before it lends to a new one; nobody has said it of this one yet.
    void takeLent(const FilingFields& fields);
    const FilingFields& lent() const { return lent_; }

Q_SIGNALS:
    void lettersChanged();   // cells of the current stamp
    void placeChanged();     // the cell in hand
    void stampChanged();     // another stamp, or its picture
    void outlinesChanged();  // corners, number of stamps, which is current
    void workChanged();      // anything that a draft should hold
    void examinationWanted(const QString& stamp_id);
    void goneThrough();  // the current stamp's letters, for the first time
    void fieldsChanged();
    void couldNot(const QString& sentence);

private:
    void putLetters(const std::string& stamp_id, const models::Reading& reading, CellPlace place,
                    const cv::Matx33d& photo_from_rectified);
    void putStamps(std::vector<StampWork> stamps, int current);
    void change(const EditOutcome& outcome, const models::Reading& before, CellPlace from,
                CellPlace last_passed, int gesture = -1);
    void leave(CellPlace from, CellPlace last_passed);
    void tellGoneThrough();
    bool leadToUnsure(std::optional<CellPlace> in_hand);
    void acceptStamp();
    void pushStamps(const QString& what, std::vector<StampWork> after, int current_after,
                    int joins_key);
    void wantExaminations();
    StampWork* find(const std::string& stamp_id);

    vision::Photo photo_;
    std::string person_;
    std::vector<StampWork> stamps_;
    int current_ = -1;
    ReadingEditor editor_;  // of the current stamp
    QUndoStack undo_;
    FilingFields fields_, lent_;
    bool candidates_in_view_ = false;
    int turnings_ = 0;  // goings through the alternatives of a cell, each undone at once
};

}  // namespace gui
